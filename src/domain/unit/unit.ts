/**
 * The profile of what is towed. `null` means "I don't know": a round then asks for the figure or falls
 * back to common practice and says so. Absence of a part is said with its own value (`'none'`, `false`, 0).
 * Values are SI, as everywhere inside the app.
 */
import type { Position } from '../checks/expects.ts';

export const UNIT_SCHEMA = 1;

export type AxleCount = 1 | 2 | 3;
export type LugCount = 4 | 5 | 6 | 8;
export type StudSize = '1/2' | '9/16' | '5/8' | 'M12' | 'M14';
export type LiftKind = 'hand-crank-cable' | 'electric-winch-cable' | 'hydraulic' | 'none';
export type BatteryKind = 'flooded' | 'agm' | 'lifepo4' | 'none';
export type FigureSource = 'maker' | 'shop' | 'owner';

export interface TireProfile {
  /** As moulded, such as "ST205/75R15". */
  readonly size: string | null;
  readonly loadRange: string | null;
  readonly loadIndex: number | null;
  /** Cold pressure on the unit's own tire placard or certification label. */
  readonly placardColdPa: number | null;
  /** Maximum on the sidewall: a cap, never the target. */
  readonly sidewallMaxPa: number | null;
  readonly maxLoadKg: number | null;
}

export interface WheelProfile {
  readonly lugs: LugCount | null;
  readonly stud: StudSize | null;
  readonly torqueNm: number | null;
  readonly torqueSource: FigureSource | null;
  /** End of the scale of the owner's torque wrench; missing or null: not known. */
  readonly wrenchMaxNm?: number | null;
  readonly rim: 'steel' | 'aluminum' | null;
  readonly bearings: 'greased' | 'oil-bath' | 'sealed' | null;
  /** DOT date code WWYY by wheel position; a missing key is unknown. */
  readonly dotCodes: Readonly<Partial<Record<Position, string>>>;
}

export interface LiftProfile {
  readonly kind: LiftKind;
  /** Cables that lift the wheels or the frame; 0 for a hydraulic lift without cables. */
  readonly cables: number;
  readonly cableDiameterM: number | null;
  readonly cableConstruction: '7x19' | '7x7' | '6x19' | '6x37' | null;
  readonly pulleys: 'greasable' | 'plain' | 'none' | null;
  /** The pivots that the wheel arms turn on. */
  readonly axleStubs: 'greasable' | 'sealed' | 'none' | null;
  /** Transport pins that take the load off the lift for the road, on each side. 0: none. */
  readonly pinsPerSide: number | null;
}

export interface TongueProfile {
  /** Coupler's ball size in inches as stamped. */
  readonly ballInches: 1.875 | 2 | 2.3125 | null;
  readonly jack: 'swivel' | 'fixed' | 'none' | null;
  readonly chains: boolean | null;
  readonly breakaway: boolean | null;
  readonly connector: '4-way' | '5-way' | '6-way' | '7-way' | null;
  /** A hitch that pivots or slides and is held by pins with keepers. */
  readonly pivotPins: boolean | null;
}

export interface CabinProfile {
  readonly door: 'house' | 'rv' | null;
  readonly deadbolt: boolean | null;
  readonly ramp: boolean;
  readonly windows: boolean | null;
  readonly roofVents: boolean | null;
  readonly holeCovers: number | null;
  readonly step: boolean;
  readonly awning: boolean;
  readonly stabilizers: boolean;
  readonly spare: boolean | null;
  readonly extinguisher: boolean | null;
}

export interface GasCylinder {
  readonly tareKg: number | null;
  /** Nominal fuel when full (a "20 lb" cylinder holds 9.07 kg). */
  readonly capacityKg: number | null;
  /** Stamped date `YYYY-MM`, and its suffix letter if any. */
  readonly date: string | null;
  readonly dateSuffix: 'E' | 'S' | null;
}

export interface AlarmProfile {
  readonly fitted: boolean | null;
  /** `YYYY-MM` printed on the back; which of the two it is. */
  readonly date: string | null;
  readonly dateMeans: 'made' | 'replace-by' | null;
  /** Whether it shows a number; missing or null: not known. */
  readonly display?: boolean | null;
}

export interface HeatProfile {
  readonly heater: 'furnace' | 'wall-heater' | 'none' | null;
  /** Input rating on the heater's plate. */
  readonly inputW: number | null;
  readonly stove: boolean | null;
  readonly airConditioner: boolean | null;
  /** The inside temperature can be read without going in; missing or null: not known. */
  readonly readFromOutside?: boolean | null;
}

export interface WeightProfile {
  readonly gvwrKg: number | null;
  /** Per axle. */
  readonly gawrKg: number | null;
  readonly emptyKg: number | null;
}

export interface Unit {
  readonly schema: typeof UNIT_SCHEMA;
  readonly id: string;
  readonly name: string;
  readonly year: number | null;
  readonly vin: string | null;
  readonly archived: boolean;
  /** Made-up unit of the demo world; shown as such wherever it appears. */
  readonly demo: boolean;
  /** Epoch milliseconds. */
  readonly createdAt: number;
  readonly updatedAt: number;
  /** Rises by one with each saved change; the higher one wins a merge. */
  readonly revision: number;
  readonly axles: AxleCount;
  readonly tires: TireProfile;
  readonly wheels: WheelProfile;
  readonly lift: LiftProfile;
  readonly tongue: TongueProfile;
  readonly brakes: 'electric' | 'surge' | 'none' | null;
  readonly cabin: CabinProfile;
  readonly heat: HeatProfile;
  readonly cylinders: readonly GasCylinder[];
  readonly battery: { readonly kind: BatteryKind | null; readonly capacityAh: number | null };
  readonly alarms: { readonly co: AlarmProfile; readonly gas: AlarmProfile; readonly smoke: AlarmProfile };
  readonly weights: WeightProfile;
  /** Overall, for the lamps the law asks for; and where it is kept, for the pressure of the air. */
  readonly widthM: number | null;
  readonly lengthM: number | null;
  readonly homeElevationM: number | null;
}

/** Wheel positions of a unit, left before right, front to rear. */
export function wheelPositions(axles: AxleCount): readonly Position[] {
  if (axles === 1) return ['left', 'right'];
  if (axles === 2) return ['left-front', 'right-front', 'left-rear', 'right-rear'];
  return ['left-front', 'right-front', 'left-middle', 'right-middle', 'left-rear', 'right-rear'];
}
