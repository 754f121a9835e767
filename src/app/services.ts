/** Everything that lives as long as the page: the record, the settings, ears, mouth, cues and the update. */
import type { Settings } from '../domain/voice/settings.ts';
import type { Record } from '../record/record.ts';
import type { UpdateHandle } from './appUpdate.ts';
import type { Clock } from './clock.ts';
import type { Store } from './store.ts';
import type { Voice } from './voice.ts';

export interface Services {
  readonly record: Record;
  readonly settings: Store<Settings>;
  readonly saveSettings: (settings: Settings) => void;
  readonly voice: Voice;
  readonly update: UpdateHandle;
  readonly clock: Clock;
  /** Told whenever something in the record changed, so that lists read it again. */
  readonly changes: Store<number>;
  /** A trouble with the record that concerns the whole app, as a sentence; null when all is well. */
  readonly trouble: Store<string | null>;
}
