/**
 * The profile form as data: which figures are asked for, in the trade's words, where each is found on the unit, and
 * when it does not apply. A screen renders it; reading and setting a figure is `fieldValue.ts`.
 */
import type { UnitId } from '../quantity/units.ts';
import { type Unit, wheelPositions } from './unit.ts';

export type FieldKind =
  | { readonly kind: 'text'; readonly maxLength: number; readonly example: string }
  /** `min`, `max` and `step` are in `us`. `metric` is shown where the person has chosen metric. */
  | {
      readonly kind: 'number';
      readonly us: UnitId;
      readonly metric: UnitId;
      readonly min: number;
      readonly max: number;
      readonly step: number;
      /** What the profile keeps it in, where that is not SI (amp-hours). */
      readonly storedIn?: UnitId;
    }
  | { readonly kind: 'choice'; readonly options: readonly FieldOption[] }
  | { readonly kind: 'yes-no' }
  /** `year-month`: "YYYY-MM". `dot-week`: the four digits WWYY. */
  | { readonly kind: 'date'; readonly form: 'year-month' | 'dot-week' };

export interface FieldOption {
  readonly value: string | number;
  readonly label: string;
}

export interface ProfileField {
  /** Path within {@link Unit}, dotted: `tires.placardColdPa`, `wheels.dotCodes.left`, `cylinders.0.tareKg`. */
  readonly path: string;
  readonly label: string;
  /** One line: what it is and where to find it. */
  readonly help: string;
  readonly kind: FieldKind;
  /** Part of the three-minute path; the others can wait for the kitchen table. */
  readonly essential: boolean;
  /** Whether "I don't know" is an honest answer and is offered. */
  readonly unknown: boolean;
  readonly appliesWhen: (unit: Unit) => boolean;
}

export interface FieldSection {
  readonly id: string;
  readonly title: string;
  /** One line under the title. */
  readonly intro: string;
  readonly fields: readonly ProfileField[];
}

const always = () => true;
const hasLift = (unit: Unit) => unit.lift.kind !== 'none';
const hasCables = (unit: Unit) => unit.lift.cables > 0;
const hasGas = (unit: Unit) => unit.cylinders.length > 0;
const hasBattery = (unit: Unit) => unit.battery.kind !== 'none';

type Options = Partial<Pick<ProfileField, 'essential' | 'unknown' | 'appliesWhen'>>;

function field(path: string, label: string, help: string, kind: FieldKind, options: Options = {}): ProfileField {
  return { path, label, help, kind, essential: false, unknown: true, appliesWhen: always, ...options };
}

const ESSENTIAL = { essential: true } as const;
/** Always one of the values offered: absence has its own. */
const CERTAIN = { unknown: false } as const;

const text = (maxLength: number, example: string): FieldKind => ({ kind: 'text', maxLength, example });
const number = (us: UnitId, metric: UnitId, min: number, max: number, step: number): Extract<FieldKind, { kind: 'number' }> => ({
  kind: 'number',
  us,
  metric,
  min,
  max,
  step,
});
const choice = (...options: readonly (readonly [value: string | number, label: string])[]): FieldKind => ({
  kind: 'choice',
  options: options.map(([value, label]) => ({ value, label })),
});
const YES_NO: FieldKind = { kind: 'yes-no' };
const YEAR_MONTH: FieldKind = { kind: 'date', form: 'year-month' };

const POSITION_LABEL = {
  left: 'left wheel',
  right: 'right wheel',
  'left-front': 'left front wheel',
  'right-front': 'right front wheel',
  'left-middle': 'left middle wheel',
  'right-middle': 'right middle wheel',
  'left-rear': 'left rear wheel',
  'right-rear': 'right rear wheel',
} as const;

function identity(): FieldSection {
  return {
    id: 'identity',
    title: 'Which unit',
    intro: 'The name is how it is spoken of on a round.',
    fields: [
      field('name', 'Name', 'What your household calls it. It is spoken aloud.', text(40, 'Heron'), {
        ...ESSENTIAL,
        ...CERTAIN,
      }),
      field(
        'year',
        'Model year',
        'On the certification label: left side, front half, outside.',
        number('count', 'count', 1950, 2100, 1),
      ),
      field(
        'vin',
        'VIN',
        'Seventeen characters on the certification label, or stamped in the tongue. Type it; it is easily misheard.',
        text(17, ''),
      ),
      field('axles', 'Axles', 'Count the wheels on one side.', choice([1, 'Single'], [2, 'Tandem'], [3, 'Triple']), {
        ...ESSENTIAL,
        ...CERTAIN,
      }),
    ],
  };
}

function tires(): FieldSection {
  return {
    id: 'tires',
    title: 'Tires',
    intro: 'The placard is the target. The sidewall figure is a cap, not a target.',
    fields: [
      field(
        'tires.placardColdPa',
        'Placard cold pressure',
        'On the tire placard or certification label: left side, front half, outside. Not the figure on the tire.',
        number('psi', 'kPa', 10, 130, 1),
        ESSENTIAL,
      ),
      field(
        'tires.sidewallMaxPa',
        'Sidewall maximum pressure',
        'Molded in the tire after "max load … at … psi cold".',
        number('psi', 'kPa', 10, 150, 1),
        ESSENTIAL,
      ),
      field('tires.size', 'Tire size', 'Molded in the sidewall, large letters.', text(24, 'ST205/75R15')),
      field(
        'tires.loadRange',
        'Load range',
        'One letter molded in the sidewall after the size.',
        choice(['B', 'B'], ['C', 'C'], ['D', 'D'], ['E', 'E'], ['F', 'F'], ['G', 'G']),
      ),
      field(
        'tires.loadIndex',
        'Load index',
        'Two or three digits before the speed letter, such as 107 in "107M". Many trailer tires have none.',
        number('count', 'count', 60, 150, 1),
      ),
      field(
        'tires.maxLoadKg',
        'Maximum load of one tire',
        'Molded in the sidewall: "max load single". Take the figure in pounds.',
        number('lb', 'kg', 300, 6000, 5),
      ),
    ],
  };
}

function wheels(unit: Unit): FieldSection {
  return {
    id: 'wheels',
    title: 'Wheels and lugs',
    intro: 'The torque figure belongs to this unit: from its handbook, or from the shop that knows the wheels.',
    fields: [
      field(
        'wheels.lugs',
        'Lugs on each wheel',
        'Count the nuts on one wheel.',
        choice([4, '4'], [5, '5'], [6, '6'], [8, '8']),
        ESSENTIAL,
      ),
      field(
        'wheels.torqueNm',
        'Lug torque',
        "In the unit's or the axle's handbook. Never guess it from the size alone.",
        number('lb-ft', 'N-m', 30, 400, 1),
        ESSENTIAL,
      ),
      field(
        'wheels.torqueSource',
        'Where the torque figure comes from',
        "A maker's figure comes before any other.",
        choice(['maker', 'Maker'], ['shop', 'Shop'], ['owner', 'My own']),
        { appliesWhen: ({ wheels: { torqueNm } }) => torqueNm !== null },
      ),
      field(
        'wheels.wrenchMaxNm',
        'Your torque wrench goes up to',
        'The highest figure on its scale. A click wrench is not to be trusted near the bottom of its range.',
        number('lb-ft', 'N-m', 20, 600, 5),
        { appliesWhen: ({ wheels: { torqueNm } }) => torqueNm !== null },
      ),
      field(
        'wheels.stud',
        'Stud size',
        'Measure across the threads, or ask the shop.',
        choice(['1/2', '1/2 in'], ['9/16', '9/16 in'], ['5/8', '5/8 in'], ['M12', 'M12'], ['M14', 'M14']),
      ),
      field('wheels.rim', 'Rims', 'A magnet sticks to steel.', choice(['steel', 'Steel'], ['aluminum', 'Aluminum'])),
      field(
        'wheels.bearings',
        'Wheel bearings',
        'A clear window in the hub cap means an oil bath.',
        choice(['greased', 'Greased'], ['oil-bath', 'Oil bath'], ['sealed', 'Sealed']),
      ),
      ...wheelPositions(unit.axles).map((position) =>
        field(
          `wheels.dotCodes.${position}`,
          `Tire date code, ${POSITION_LABEL[position as keyof typeof POSITION_LABEL]}`,
          'Last four digits after DOT on the sidewall: week and year, such as 3623. It may be on the inner side only.',
          { kind: 'date', form: 'dot-week' },
        ),
      ),
    ],
  };
}

function lift(): FieldSection {
  return {
    id: 'lift',
    title: 'Lift frame',
    intro: 'How it is raised for the road and lowered onto the ice.',
    fields: [
      field(
        'lift.kind',
        'Lift',
        'What raises the unit onto its wheels.',
        choice(
          ['hand-crank-cable', 'Hand-crank winch and cable'],
          ['electric-winch-cable', 'Electric winch and cable'],
          ['hydraulic', 'Hydraulic'],
          ['none', 'None'],
        ),
        { ...ESSENTIAL, ...CERTAIN },
      ),
      field(
        'lift.cables',
        'Lift cables',
        'How many cables run from the winch to the wheel arms.',
        choice([0, 'None'], [1, '1'], [2, '2'], [3, '3'], [4, '4']),
        { ...ESSENTIAL, ...CERTAIN, appliesWhen: hasLift },
      ),
      field(
        'lift.pinsPerSide',
        'Transport pins on each side',
        'Pins that take the load off the lift for the road.',
        choice([0, 'None'], [1, '1'], [2, '2'], [3, '3'], [4, '4']),
        { ...ESSENTIAL, appliesWhen: hasLift },
      ),
      field(
        'lift.pulleys',
        'Pulleys',
        'Look for a grease fitting on the pulley or its pin.',
        choice(['greasable', 'With grease fittings'], ['plain', 'Without fittings'], ['none', 'No pulleys']),
        { ...ESSENTIAL, appliesWhen: hasCables },
      ),
      field(
        'lift.axleStubs',
        'Axle-stub pivots',
        'The pivots that the wheel arms turn on. A grease fitting there means greasable.',
        choice(['greasable', 'Greasable'], ['sealed', 'Sealed'], ['none', 'None']),
        { ...ESSENTIAL, appliesWhen: hasLift },
      ),
      field(
        'lift.cableDiameterM',
        'Cable diameter',
        'Across the widest part of the cable.',
        number('in', 'mm', 0.09375, 1, 0.0625),
        {
          appliesWhen: hasCables,
        },
      ),
      field(
        'lift.cableConstruction',
        'Cable construction',
        'Strands times wires in a strand; on the label of a new cable.',
        choice(['7x19', '7 × 19'], ['7x7', '7 × 7'], ['6x19', '6 × 19'], ['6x37', '6 × 37']),
        { appliesWhen: hasCables },
      ),
    ],
  };
}

function tongue(): FieldSection {
  return {
    id: 'tongue',
    title: 'Tongue and brakes',
    intro: 'What ties it to the truck.',
    fields: [
      field(
        'tongue.ballInches',
        'Ball size',
        'Stamped on the coupler, and on top of the ball. The two must be the same.',
        choice([1.875, '1-7/8 in'], [2, '2 in'], [2.3125, '2-5/16 in']),
        ESSENTIAL,
      ),
      field(
        'brakes',
        'Brakes',
        'Electric brakes have wires at the wheels.',
        choice(['electric', 'Electric'], ['surge', 'Surge'], ['none', 'None']),
        ESSENTIAL,
      ),
      field('tongue.breakaway', 'Breakaway switch', 'A small box on the tongue with a pin on a thin cable.', YES_NO, ESSENTIAL),
      field('tongue.chains', 'Safety chains', 'Chains or cables from tongue to truck.', YES_NO),
      field(
        'tongue.connector',
        'Electrical connector',
        'Count the contacts of the plug.',
        choice(['4-way', '4-way'], ['5-way', '5-way'], ['6-way', '6-way'], ['7-way', '7-way']),
      ),
      field(
        'tongue.jack',
        'Tongue jack',
        'A swivel jack turns up to lie along the tongue.',
        choice(['swivel', 'Swivel'], ['fixed', 'Fixed'], ['none', 'None']),
      ),
      field(
        'tongue.pivotPins',
        'Pivoting or sliding hitch',
        'A tongue that pivots or slides and is held by pins with keepers.',
        YES_NO,
      ),
    ],
  };
}

function cabin(): FieldSection {
  return {
    id: 'cabin',
    title: 'Cabin',
    intro: 'What has to be shut, stowed or locked for the road.',
    fields: [
      field(
        'cabin.door',
        'Door',
        'A house door has a knob and a deadbolt; an RV-type door a slam latch.',
        choice(['house', 'House door'], ['rv', 'RV-type']),
      ),
      field('cabin.deadbolt', 'Deadbolt', 'A separate bolt thrown by a key or a thumb turn.', YES_NO, ESSENTIAL),
      field('cabin.ramp', 'Ramp door', 'A rear or side wall that folds down as a ramp.', YES_NO, { ...ESSENTIAL, ...CERTAIN }),
      field('cabin.awning', 'Awning', 'A roll-out roof on the side wall.', YES_NO, { ...ESSENTIAL, ...CERTAIN }),
      field('cabin.stabilizers', 'Stabilizer jacks', 'Jacks at the corners that steady it when parked.', YES_NO, {
        ...ESSENTIAL,
        ...CERTAIN,
      }),
      field('cabin.step', 'Folding step', 'At the door.', YES_NO, { ...ESSENTIAL, ...CERTAIN }),
      field('cabin.holeCovers', 'Hole covers', 'How many holes in the floor. None: 0.', number('count', 'count', 0, 30, 1)),
      field('cabin.windows', 'Windows that open', '', YES_NO),
      field('cabin.roofVents', 'Roof vents', '', YES_NO),
      field('cabin.spare', 'Spare wheel', 'Carried on the unit.', YES_NO),
      field('cabin.extinguisher', 'Fire extinguisher', 'Kept near the door.', YES_NO),
      field('widthM', 'Overall width', 'Fenders and all. Eighty inches or more needs more lamps.', number('ft', 'm', 4, 9, 0.5)),
      field('lengthM', 'Overall length', 'From coupler to rear, tongue and all.', number('ft', 'm', 8, 50, 0.5)),
    ],
  };
}

function heat(unit: Unit): FieldSection {
  return {
    id: 'heat',
    title: 'Heat and gas',
    intro: 'What burns gas, and what it burns.',
    fields: [
      field(
        'heat.heater',
        'Heater',
        'A furnace has a fan and ducts; a wall heater glows or burns behind a grille.',
        choice(['furnace', 'Furnace'], ['wall-heater', 'Wall heater'], ['none', 'None']),
        ESSENTIAL,
      ),
      field(
        'heat.inputW',
        'Heater input rating',
        'On the plate inside the heater, "input".',
        number('BTU/h', 'W', 2000, 60000, 500),
        {
          appliesWhen: ({ heat: { heater } }) => heater !== 'none',
        },
      ),
      field(
        'heat.readFromOutside',
        'Inside temperature read from outside',
        'On a display that you carry, or behind a window. Then it is read a third time, and tonight can be forecast.',
        YES_NO,
        { appliesWhen: ({ heat: { heater } }) => heater !== 'none' },
      ),
      field('heat.stove', 'Stove or cooktop', '', YES_NO),
      field('heat.airConditioner', 'Air conditioner', '', YES_NO),
      field(
        'cylinders.length',
        'Gas cylinders',
        'How many are carried.',
        choice([0, 'None'], [1, '1'], [2, '2'], [3, '3'], [4, '4']),
        {
          ...ESSENTIAL,
          ...CERTAIN,
        },
      ),
      ...unit.cylinders.flatMap((_, index) => cylinder(index, unit.cylinders.length)),
    ],
  };
}

function cylinder(index: number, count: number): readonly ProfileField[] {
  const which = count === 1 ? 'Cylinder' : `Cylinder ${index + 1}`;
  return [
    field(
      `cylinders.${index}.tareKg`,
      `${which}: tare weight`,
      'Stamped in the collar after TW: its weight empty.',
      number('lb', 'kg', 5, 90, 0.1),
      {
        appliesWhen: hasGas,
      },
    ),
    field(
      `cylinders.${index}.capacityKg`,
      `${which}: holds when full`,
      'A "20-pound" cylinder holds 20.',
      number('lb', 'kg', 1, 120, 0.1),
      {
        appliesWhen: hasGas,
      },
    ),
    field(
      `cylinders.${index}.date`,
      `${which}: latest date stamped`,
      'Month and year in the collar: when made, or when last requalified.',
      YEAR_MONTH,
      {
        appliesWhen: hasGas,
      },
    ),
    field(
      `cylinders.${index}.dateSuffix`,
      `${which}: letter after the date`,
      'A letter behind a requalification date. A date of manufacture has none.',
      choice(['E', 'E'], ['S', 'S']),
      { appliesWhen: hasGas },
    ),
  ];
}

function power(): FieldSection {
  return {
    id: 'power',
    title: 'Battery and alarms',
    intro: 'What must be alive before anyone sleeps in it.',
    fields: [
      field(
        'battery.kind',
        'House battery',
        'The kind is printed on the case. A voltage means different things for each.',
        choice(['flooded', 'Flooded lead-acid'], ['agm', 'AGM'], ['lifepo4', 'Lithium (LiFePO4)'], ['none', 'None']),
        ESSENTIAL,
      ),
      field(
        'battery.capacityAh',
        'Battery capacity',
        'On the label, in amp-hours.',
        { ...number('Ah', 'Ah', 5, 800, 1), storedIn: 'Ah' },
        {
          appliesWhen: hasBattery,
        },
      ),
      ...alarm('co', 'Carbon monoxide alarm', true),
      ...alarm('gas', 'Gas alarm', true),
      ...alarm('smoke', 'Smoke alarm', false),
    ],
  };
}

function alarm(which: 'co' | 'gas' | 'smoke', label: string, essential: boolean): readonly ProfileField[] {
  const fitted = (unit: Unit) => unit.alarms[which].fitted !== false;
  return [
    field(`alarms.${which}.fitted`, label, 'Whether there is one.', YES_NO, { essential }),
    field(`alarms.${which}.date`, `${label}: date on the back`, 'Month and year printed on the back or the side.', YEAR_MONTH, {
      appliesWhen: fitted,
    }),
    field(
      `alarms.${which}.dateMeans`,
      `${label}: what the date means`,
      'The words beside the date say which.',
      choice(['made', 'Made on'], ['replace-by', 'Replace by']),
      { appliesWhen: (unit) => fitted(unit) && unit.alarms[which].date !== null },
    ),
    ...(which === 'co'
      ? [
          field('alarms.co.display', `${label}: shows a number`, 'Some have a window that shows parts per million.', YES_NO, {
            appliesWhen: fitted,
          }),
        ]
      : []),
  ];
}

function weights(): FieldSection {
  return {
    id: 'weights',
    title: 'Weights and home',
    intro: 'From the certification label. The height of home corrects a pressure for the air around it.',
    fields: [
      field('weights.gvwrKg', 'GVWR', 'The most it may weigh, all told.', number('lb', 'kg', 800, 26000, 10)),
      field('weights.gawrKg', 'GAWR of one axle', 'The most that one axle may carry.', number('lb', 'kg', 800, 12000, 10)),
      field('weights.emptyKg', 'Empty weight', 'As built, or from a scale ticket.', number('lb', 'kg', 300, 26000, 10)),
      field(
        'homeElevationM',
        'Elevation of home',
        'Height above sea level where it is kept.',
        number('ft', 'm', -300, 14000, 50),
      ),
    ],
  };
}

/** Sections of the form for this unit, with only the fields that apply to it. */
export function profileSections(unit: Unit): readonly FieldSection[] {
  const sections = [identity(), tires(), wheels(unit), lift(), tongue(), cabin(), heat(unit), power(), weights()];
  return sections.map((section) => ({ ...section, fields: section.fields.filter((entry) => entry.appliesWhen(unit)) }));
}

/** The three-minute path: the same sections with the essential fields only, empty ones left out. */
export function essentialSections(unit: Unit): readonly FieldSection[] {
  return profileSections(unit)
    .map((section) => ({ ...section, fields: section.fields.filter((entry) => entry.essential) }))
    .filter((section) => section.fields.length > 0);
}
