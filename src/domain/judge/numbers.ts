/**
 * Every figure that a judgement rests on, once, with its source. The rules take their limits from here and the page "where
 * our numbers come from" is made from the same rows, so that the two cannot drift apart.
 */
import type { Source } from '../checks/outcome.ts';
import type { UnitId } from '../quantity/units.ts';

export interface Figure {
  readonly label: string;
  readonly value: number;
  /** Unit of `value`; `percent` figures are kept as shares (0.75). */
  readonly unit: UnitId | 'share';
  readonly source: Source;
}

const published = (text: string, fromMemory = false): Source => ({
  kind: 'published',
  text,
  ...(fromMemory ? { fromMemory } : {}),
});
const PRACTICE: Source = { kind: 'common-practice', text: 'common practice, no source' };
const figure = (label: string, value: number, unit: Figure['unit'], source: Source = PRACTICE): Figure => ({
  label,
  value,
  unit,
  source,
});

/** Of the placard's cold pressure. */
export const PRESSURE_SHARE = {
  fix: figure('ten percent under the placard', 0.9, 'share'),
  hold: figure(
    'twenty-five percent under the placard',
    0.75,
    'share',
    published('49 CFR 571.138 S4.2(a), threshold borrowed from cars'),
  ),
} as const;

/** Cold: parked for this long, or driven less than a mile. */
export const COLD_AFTER = figure(
  'tires are cold after standing',
  3,
  'h',
  published('49 CFR 575.6 owner information as carried by tire makers'),
);

export const TREAD = {
  watch: figure('four thirty-seconds: wear is well on', 4, '32nds'),
  fix: figure('three thirty-seconds: replace soon', 3, '32nds'),
  hold: figure('legal minimum, two thirty-seconds', 2, '32nds', published('49 CFR 393.75(c); 49 CFR 570.62(a)')),
} as const;

export const TIRE_YEARS = {
  watch: figure('look closely from five years on', 5, 'year', published('tire makers: yearly check after five years')),
  fix: figure(
    'replace at six years',
    6,
    'year',
    published('British Rubber Manufacturers Association, June 2001: not put in service after six years'),
  ),
  hold: figure('not towed on after ten years', 10, 'year', published('tire makers: ten years from manufacture at most')),
} as const;

/** Lugs of one wheel that turned before the click. */
export const LUGS_MOVED = {
  watch: figure('none may move', 0, 'count'),
  hold: figure('more than one moved: wheel off and look', 1, 'count'),
} as const;

export const ROPE_WIRES = {
  fix: figure('no broken wires', 0, 'count'),
  hold: figure(
    'fewer than three broken wires in one lay',
    2,
    'count',
    published('29 CFR 1926.1413(a)(2): three in one strand or six in one lay'),
  ),
} as const;

/** Sideways give of a lift cable at its middle, pushed firmly with one hand, in travel position. */
export const CABLE_GIVE = {
  watch: figure('clearly slack', 1, 'in'),
  hold: figure('less gives: the cable carries weight', 0.5, 'in'),
} as const;

const restTable = published('industry table of rested open-circuit voltage at 77 °F', true);
export const BATTERY_REST = {
  flooded: {
    watch: figure('about three quarters full', 12.4, 'V', restTable),
    fix: figure('about a quarter full', 12.06, 'V', restTable),
  },
  agm: { watch: figure('about half full', 12.3, 'V', restTable), fix: figure('about a quarter full', 12, 'V', restTable) },
  lifepo4: { watch: figure('about a quarter full', 12.9, 'V', restTable), fix: figure('nearly empty', 12.5, 'V', restTable) },
} as const;
/** Outside these a "rest" voltage is something else: a charger, a wrong meter, a dead cell. */
export const BATTERY_PLAUSIBLE = {
  charging: figure('a charger is on', 13.9, 'V'),
  low: figure('not a 12 volt battery', 9, 'V'),
  high: figure('not a 12 volt battery', 15.5, 'V'),
} as const;

export const BREAKAWAY_REST = {
  watch: figure('charged', 12.4, 'V', restTable),
  fix: figure('half charged', 12.2, 'V', restTable),
  hold: figure('flat', 11.9, 'V', restTable),
} as const;

/** Rise of the inside temperature in the ten minutes of the test. */
export const FURNACE_RISE = {
  watch: figure('warms as a sound furnace does', 8, 'F-diff'),
  fix: figure('hardly warms', 3, 'F-diff'),
} as const;

/** LP gas, gross: heat of combustion and density of commercial propane at 60 °F. */
export const PROPANE_BTU_PER_LB = figure(
  'heat in a pound of propane',
  21_548,
  'BTU',
  published('three LP gas tables, commercial propane at 60 °F'),
);

export const CYLINDER_YEARS = {
  none: figure(
    'first due twelve years after manufacture',
    12,
    'year',
    published('49 CFR 180.209 as changed by 85 FR 68790', true),
  ),
  external: figure('suffix E: five years', 5, 'year', published('49 CFR 180.209(g)', true)),
  proof: figure('suffix S: seven years, the earlier of two readings of the rule', 7, 'year', published('49 CFR 180.209', true)),
} as const;

/** From the date of manufacture; the label on the alarm comes first. */
export const ALARM_YEARS = {
  co: figure('carbon monoxide alarm', 7, 'year', published('alarm makers: five to ten years, commonly seven', true)),
  gas: figure('gas alarm', 5, 'year', published('alarm makers: about five years', true)),
  smoke: figure('smoke alarm', 10, 'year', published('NFPA 72: ten years', true)),
} as const;

export const CO_PPM = {
  watch: figure('note it', 8, 'ppm', published('EPA national standard, 9 ppm over eight hours', true)),
  fix: figure('air out and find the cause, do not sleep in it', 34, 'ppm', published('NIOSH limit, 35 ppm', true)),
  hold: figure('everyone out', 69, 'ppm', published('UL 2034: an alarm sounds at 70 ppm within four hours')),
} as const;

export const ICE = {
  house: figure(
    'heavy truck with a wheelhouse, new clear ice',
    20,
    'in',
    published('Minnesota natural-resources guidance, December 2024; local authority first'),
  ),
} as const;

/** Rows for the page, grouped. */
export const NUMBER_GROUPS: readonly { readonly title: string; readonly rows: readonly Figure[] }[] = [
  { title: 'Tire pressure', rows: [PRESSURE_SHARE.fix, PRESSURE_SHARE.hold, COLD_AFTER] },
  { title: 'Tread', rows: Object.values(TREAD) },
  { title: 'Tire age', rows: Object.values(TIRE_YEARS) },
  { title: 'Lugs that moved on one wheel', rows: Object.values(LUGS_MOVED) },
  { title: 'Lift cable', rows: [...Object.values(ROPE_WIRES), ...Object.values(CABLE_GIVE)] },
  {
    title: 'House battery at rest',
    rows: [...Object.values(BATTERY_REST).flatMap((row) => Object.values(row)), ...Object.values(BATTERY_PLAUSIBLE)],
  },
  { title: 'Breakaway battery at rest', rows: Object.values(BREAKAWAY_REST) },
  { title: 'Heater', rows: [...Object.values(FURNACE_RISE), PROPANE_BTU_PER_LB] },
  { title: 'Gas cylinders', rows: Object.values(CYLINDER_YEARS) },
  { title: 'Alarms', rows: [...Object.values(ALARM_YEARS), ...Object.values(CO_PPM)] },
  { title: 'Ice', rows: Object.values(ICE) },
];
