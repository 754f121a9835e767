/** The weights page as data: what is typed, what it comes to, and a sentence wherever it is no number. */
import { WEIGHT } from '../judge/numbers/weight.ts';
import { formatQuantity, roundedText } from '../quantity/format.ts';
import { fromSI, toSI, UNITS, type UnitId } from '../quantity/units.ts';
import { axleCapacity, loadOfIndex } from '../tires/capacity.ts';
import type { Unit } from '../unit/unit.ts';
import { judgeLoad, type LoadVerdict, type Ratings } from './judgeLoad.ts';
import { type LoadedItem, type LoadedUnit, liquidMass, loadedUnit } from './load.ts';

type Display = 'us' | 'metric';

/** What an amount is given in: a weight, or a volume of something known. */
export const CONTENTS = ['weight', 'water', 'gasoline', 'diesel', 'propane'] as const;
export type Contents = (typeof CONTENTS)[number];

export interface ItemForm {
  readonly id: string;
  readonly name: string;
  readonly amount: string;
  readonly contents: Contents;
  readonly distance: string;
  readonly side: 'ahead' | 'behind';
}

export interface LoadForm {
  readonly emptyWeight: string;
  readonly emptyTongue: string;
  readonly ballDistance: string;
  readonly items: readonly ItemForm[];
  readonly coupler: string;
  readonly ball: string;
  readonly receiver: string;
  readonly chain: string;
  readonly tongueRating: string;
}

/** Fields that are one number each. */
export type LoadField = Exclude<keyof LoadForm, 'items'>;

export interface LoadUnits {
  readonly mass: UnitId;
  readonly distance: UnitId;
  readonly volume: UnitId;
}

/** Units that are typed in a system. */
export function loadUnits(display: Display): LoadUnits {
  return display === 'metric' ? { mass: 'kg', distance: 'm', volume: 'L' } : { mass: 'lb', distance: 'ft', volume: 'gal' };
}

const DENSITIES: Readonly<Record<Exclude<Contents, 'weight'>, number>> = {
  water: WEIGHT.water.si,
  gasoline: WEIGHT.gasoline.si,
  diesel: WEIGHT.diesel.si,
  propane: WEIGHT.propane.si,
};

/** A form to start from: what the profile knows, and the things that most units carry. */
export function startLoadForm(unit: Unit, display: Display): LoadForm {
  const { mass } = loadUnits(display);
  const typed = (kg: number | null) => (kg === null ? '' : roundedText(fromSI(kg, mass), 0));
  const item = (id: string, name: string, contents: Contents, side: ItemForm['side'], amount = ''): ItemForm => ({
    id,
    name,
    amount,
    contents,
    distance: '',
    side,
  });
  const cylinders = unit.cylinders.map(({ tareKg, capacityKg }, index) =>
    item(
      `cylinder-${index}`,
      unit.cylinders.length > 1 ? `Gas cylinder ${index + 1}, full` : 'Gas cylinder, full',
      'weight',
      'ahead',
      tareKg === null || capacityKg === null ? '' : typed(tareKg + capacityKg),
    ),
  );
  return {
    emptyWeight: typed(unit.weights.emptyKg),
    emptyTongue: '',
    ballDistance: '',
    items: [
      ...cylinders,
      item('battery', 'Battery', 'weight', 'ahead'),
      item('water', 'Water', 'water', 'ahead'),
      item('front-gear', 'Gear in front of the axle', 'weight', 'ahead'),
      item('rear-gear', 'Gear behind the axle', 'weight', 'behind'),
    ],
    coupler: '',
    ball: '',
    receiver: '',
    chain: '',
    tongueRating: '',
  };
}

export interface LoadReading {
  /** Why a field is no number, by its id (`emptyWeight`, `items/<id>/amount`). */
  readonly refusals: Readonly<Record<string, string>>;
  /** What is still to be filled in; null when the sum could be made. */
  readonly wanting: string | null;
  readonly loaded: LoadedUnit | null;
  readonly verdict: LoadVerdict | null;
}

/**
 * What a form comes to. Empty items are left out; nothing is computed while a field is no number.
 */
export function readLoadForm(form: LoadForm, unit: Unit, display: Display): LoadReading {
  const { mass, distance, volume } = loadUnits(display);
  const refusals: Record<string, string> = {};
  const read = (id: string, text: string, unitId: UnitId): number | null => {
    const value = numberOf(text);
    if (value === 'none') return null;
    if (value === null || value < 0 || value > MOST) {
      refusals[id] = `Give a plain number of ${UNITS[unitId].spoken[1]}, like ${unitId === distance ? '12.5' : '650'}.`;
      return null;
    }
    return toSI(value, unitId);
  };
  const unplaced: string[] = [];
  const emptyKg = read('emptyWeight', form.emptyWeight, mass);
  const tongueKg = read('emptyTongue', form.emptyTongue, mass);
  const ballM = read('ballDistance', form.ballDistance, distance);
  const items = form.items.flatMap((item): LoadedItem[] => {
    const isVolume = item.contents !== 'weight';
    const amount = read(`items/${item.id}/amount`, item.amount, isVolume ? volume : mass);
    const away = read(`items/${item.id}/distance`, item.distance, distance);
    if (amount === null || amount === 0) return [];
    if (away === null) {
      unplaced.push(item.name.trim().toLowerCase() || 'the thing added');
      return [];
    }
    const massKg = item.contents === 'weight' ? amount : liquidMass(amount, DENSITIES[item.contents]);
    return [{ name: item.name, massKg, aheadM: item.side === 'ahead' ? away : -away }];
  });
  const ratings: Ratings = {
    gvwrKg: unit.weights.gvwrKg,
    gawrKg: unit.weights.gawrKg,
    axles: unit.axles,
    tiresKg: tiresOf(unit),
    couplerKg: read('coupler', form.coupler, mass),
    ballKg: read('ball', form.ball, mass),
    receiverKg: read('receiver', form.receiver, mass),
    chainKg: read('chain', form.chain, mass),
    tongueKg: read('tongueRating', form.tongueRating, mass),
  };
  if (Object.keys(refusals).length > 0) {
    return { refusals, wanting: 'Mend the marked fields, and the sum comes here.', loaded: null, verdict: null };
  }
  const result = loadedUnit(
    { massKg: emptyKg ?? Number.NaN, tongueKg: tongueKg ?? Number.NaN, ballAheadM: ballM ?? Number.NaN },
    items,
  );
  if (!result.ok) return { refusals, wanting: result.sentence, loaded: null, verdict: null };
  if (unplaced.length > 0) {
    const wanting = `Still wanted: the distance from the middle of the axles, for ${unplaced[0]}.`;
    return { refusals, wanting, loaded: null, verdict: null };
  }
  return { refusals, wanting: null, loaded: result.loaded, verdict: judgeLoad(result.loaded, ratings, display) };
}

/** Anything heavier or further away is a slip of the finger. */
const MOST = 100_000;

/** `none` for an empty field, null for what is no number. */
function numberOf(text: string): number | 'none' | null {
  const plain = text.trim().replace(/,(?=\d{3}(\D|$))/g, '');
  if (plain === '') return 'none';
  if (!/^\d*[.,]?\d+$|^\d+[.,]$/.test(plain)) return null;
  const value = Number(plain.replace(',', '.'));
  return Number.isFinite(value) ? value : null;
}

/** What all tires carry by the sidewall figure, or by load index where only that is known. */
function tiresOf(unit: Unit): number | null {
  const { maxLoadKg, loadIndex, size } = unit.tires;
  const each = maxLoadKg ?? (loadIndex === null ? null : loadOfIndex(loadIndex));
  if (each === null) return null;
  const isPassenger = size?.trim().toUpperCase().startsWith('P') ?? false;
  return unit.axles * axleCapacity({ tires: 2, loadKg: each, isPassenger });
}

/** "6,150.8 lb" for the three sums of a loaded unit. */
export function sumsOf(loaded: LoadedUnit, display: Display): readonly { readonly label: string; readonly text: string }[] {
  const kg = (value: number) => formatQuantity(value, 'lb', display);
  return [
    { label: 'Gross weight', text: kg(loaded.grossKg) },
    { label: 'On the axles', text: kg(loaded.axlesKg) },
    { label: 'On the tongue', text: `${kg(loaded.tongueKg)}, ${roundedText(loaded.tongueShare * 100, 1)} % of gross` },
  ];
}
