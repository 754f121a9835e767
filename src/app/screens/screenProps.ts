import type { Route } from '../route.ts';
import type { Services } from '../services.ts';

/** What every place of the app is given. */
export interface ScreenProps {
  readonly services: Services;
  readonly go: (route: Route) => void;
}
