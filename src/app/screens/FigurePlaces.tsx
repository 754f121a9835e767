/** Where our numbers come from, and what a load comes to. Loaded when first opened. */
import '../../ui/numbers/numbers.css';
import '../../ui/weights/weights.css';
import { NumbersPage } from '../../ui/numbers/NumbersPage.tsx';
import { WeightsPage } from '../../ui/weights/WeightsPage.tsx';
import { useStore } from '../store.ts';
import { useRecordData } from '../useRecordData.ts';
import { Missing } from './Missing.tsx';
import type { ScreenProps } from './screenProps.ts';

export function NumbersPlace({ services, go }: ScreenProps) {
  const { display } = useStore(services.settings);
  return <NumbersPage display={display} onBack={() => go({ at: 'home' })} />;
}

export function WeightsPlace({ services, go, unit: id }: ScreenProps & { readonly unit: string }) {
  const { display } = useStore(services.settings);
  const units = useRecordData(services, 'units', () => services.record.units());
  if (units.state === 'loading') return <main className="page" aria-busy="true" />;
  const unit = units.state === 'ready' ? units.value.find((candidate) => candidate.id === id) : undefined;
  if (!unit) return <Missing sentence="This unit is not on this device." onHome={() => go({ at: 'home' })} />;
  return <WeightsPage unit={unit} display={display} onBack={() => go({ at: 'unit', unit: id })} />;
}
