import type { Unit } from '../unit/unit.ts';
import type { JudgeSpec, Outcome, RuleId } from './outcome.ts';

const spec = (rule: RuleId, worst: Outcome, params: JudgeSpec['params'] = {}): JudgeSpec => ({ rule, worst, limits: [], params });
export const tirePressureSpec = (_unit: Unit) => spec('tire-pressure', 'hold');
export const treadSpec = () => spec('tread-depth', 'hold');
export const tireAgeSpec = () => spec('tire-age', 'hold');
export const lugsMovedSpec = (_unit: Unit) => spec('lugs-moved', 'hold');
export const brokenWiresSpec = (_unit: Unit) => spec('broken-wires', 'hold');
export const cablePushSpec = (_unit: Unit) => spec('cable-push', 'hold');
export const batteryRestSpec = (_unit: Unit) => spec('battery-rest', 'fix');
export const breakawayRestSpec = () => spec('breakaway-rest', 'hold');
export const insideStartSpec = () => spec('inside-start', 'ok');
export const furnaceRiseSpec = (_unit: Unit, params: { startKey: string; minutes: number }) =>
  spec('furnace-rise', 'fix', params);
export const cylinderWeightSpec = (_unit: Unit, _index: number) => spec('cylinder-weight', 'fix');
export const cylinderDateSpec = (_unit: Unit, _index: number) => spec('cylinder-date', 'fix');
export const alarmDateSpec = (_unit: Unit, alarm: 'co' | 'gas' | 'smoke') => spec('alarm-date', 'fix', { alarm });
export const coReadingSpec = () => spec('co-reading', 'hold');
export const outsideTemperatureSpec = () => spec('outside-temperature', 'ok');
export const iceThicknessSpec = () => spec('ice-thickness', 'hold');
export const stateSpec = (worst: Outcome) => spec('state', worst);
export const choiceSpec = (worst: Outcome, outcomes: Readonly<Record<string, Outcome>>) => spec('choice', worst, outcomes);
export const recordOnlySpec = () => spec('record-only', 'ok');
