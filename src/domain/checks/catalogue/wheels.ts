/** At each wheel: tire, lugs, rim, hub and the pivot of its arm. */

import {
  lugsMovedSpec,
  recordOnlySpec,
  sinceMountedSpec,
  stateSpec,
  tireAgeSpec,
  tirePressureSpec,
  treadSpec,
} from '../../judge/specs.ts';
import { stagesSentence, starOrderSentence } from '../../lugs/tightening.ts';
import { fromSI } from '../../quantity/units.ts';
import { numberInWords } from '../../quantity/words.ts';
import type { CheckDefinition, CheckScope } from '../check.ts';
import { count, date, defineCheck, reading, state } from '../define.ts';
import { hasLift } from '../has.ts';
import { isTireDateSettled } from '../known.ts';
import { at, inWords, place } from '../phrasing.ts';
import { BEFORE_LEAVING, BEFORE_TOWING, BOTH_DEPARTURES, EVERY_ROUND, ON_THE_ROAD } from '../rounds.ts';
import { COMMON_PRACTICE, MAKERS_HANDBOOK, published, RIMS, SUSPENSION, TIRE_CODE, TIRES, WHEELS } from '../sources.ts';

/** The check that holds how far a wheel has gone since it was mounted. */
export const SINCE_MOUNTED = 'since-mounted';

/** Wheels bear the unit, pinned, before anyone kneels beside one. */
const ON_ITS_WHEELS = ['held-still', 'frame-raised', 'transport-pins', 'lift-eased'] as const;

function usualPressure({ unit }: Pick<CheckScope, 'unit'>): readonly [number, number] {
  const target = unit.tires.placardColdPa ?? unit.tires.sidewallMaxPa;
  if (target === null) return [35, 85];
  const psi = Math.round(fromSI(target, 'psi'));
  return [Math.round(psi * 0.75), psi + 5];
}

/** The torque figure as it is spoken, or null where it is not known or not a figure a wrench shows. */
function spokenTorque({ unit, display }: Pick<CheckScope, 'unit' | 'display'>): string | null {
  const { torqueNm } = unit.wheels;
  if (torqueNm === null || !Number.isFinite(torqueNm) || torqueNm <= 0) return null;
  const value = Math.round(fromSI(torqueNm, display === 'metric' ? 'N-m' : 'lb-ft'));
  if (value > 999) return null;
  return `${inWords(value)} ${display === 'metric' ? 'newton-meters' : 'foot-pounds'}`;
}

function lugsAsk(scope: CheckScope): string {
  const torque = spokenTorque(scope);
  const { lugs } = scope.unit.wheels;
  const each = lugs === null ? 'every lug' : `all ${inWords(lugs)} lugs`;
  const setTo = torque === null ? 'the torque in your handbook' : torque;
  return `${at(scope, 'wheel')}. Wrench at ${setTo}, ${each}, one slow pull each. How many moved before the click?`;
}

/** Star and stages for this wheel, as far as its figures are known; the same words whenever lugs are tightened. */
function lugsMend({ unit, display }: CheckScope): string {
  const { lugs, torqueNm } = unit.wheels;
  const star = lugs === null ? 'Tighten across the wheel in a star.' : `Tighten in a star. ${starOrderSentence(lugs)}`;
  const steps = torqueNm === null ? '' : ` ${stagesSentence(torqueNm, display ?? 'us')}`;
  return `${star}${steps} Two or more moved: block the frame, wheel off, look at seat, holes and studs. Pull again after ten, twenty-five and fifty miles.`;
}

/** What the odometer showed when the wheel went on, so that the distance can be read off it. */
function odometerThen({ mounted, display }: CheckScope): string {
  const then = mounted?.odometerM ?? null;
  if (then === null) return '';
  const metric = display === 'metric';
  return ` The odometer showed ${numberInWords(Math.round(fromSI(then, metric ? 'km' : 'mi')))} ${metric ? 'kilometers' : 'miles'} then.`;
}

const lugMax = ({ unit }: Pick<CheckScope, 'unit'>) => unit.wheels.lugs ?? 8;

export const WHEEL_CHECKS: readonly CheckDefinition[] = [
  defineCheck({
    id: 'placard-pressure',
    rounds: BEFORE_TOWING,
    station: 'left-side',
    applies: ({ unit }) => unit.tires.placardColdPa === null,
    names: ['placard', 'placard pressure', 'label pressure'],
    expects: (scope) =>
      reading(
        {
          quantity: 'placard-pressure',
          unit: 'psi',
          others: ['kPa', 'bar'],
          min: 10,
          max: 130,
          step: 1,
          forms: ['whole'],
          usual: [50, 80],
          metric: { unit: 'kPa', step: 5, forms: ['whole'] },
        },
        scope,
      ),
    lines: {
      name: 'placard pressure',
      ask: 'Left side, front half: find the tire label. What cold pressure does it ask for?',
      askTerse: 'Placard pressure?',
      hint: (scope) =>
        scope.display === 'metric'
          ? 'Say the pressure, like "four fifty".'
          : 'Say the pressure, like "sixty-five". No label: say skip.',
      why: 'It is the target for every tire. The figure on the tire itself is only its cap.',
      mend: 'Ask the maker or a shop for the figure, and put it in the profile.',
      caution: null,
    },
    judge: recordOnlySpec(),
    takes: 40,
    worst: 'ok',
    sources: [published("unit's tire placard (49 CFR 571.110 S4.3)")],
  }),
  defineCheck({
    id: 'tire-pressure',
    rounds: BOTH_DEPARTURES,
    spread: 'wheel',
    station: 'wheel',
    names: ['pressure', 'tire pressure', 'air', 'tire', 'air pressure'],
    after: [...ON_ITS_WHEELS, 'outside-temperature', 'wind', 'parked-time', 'placard-pressure', 'ice-wheels'],
    expects: (scope) =>
      reading(
        {
          quantity: 'tire-pressure',
          unit: 'psi',
          others: ['kPa', 'bar'],
          min: 0,
          max: 150,
          step: 0.5,
          forms: ['whole', 'half'],
          usual: usualPressure(scope),
          metric: { unit: 'kPa', step: 5, forms: ['whole'] },
        },
        scope,
      ),
    lines: {
      name: (scope) => `${place(scope)} tire pressure`,
      ask: (scope) => `${at(scope, 'tire')}. What does the gauge read?`,
      askTerse: (scope) => `${at(scope, 'pressure')}?`,
      hint: (scope) =>
        scope.display === 'metric' ? 'Say the pressure, like "four hundred twenty".' : 'Say the pressure, like "sixty-two".',
      why: 'A soft tire runs hot, even in the cold, and comes apart under load.',
      mend: 'Fill it to the placard, never over the sidewall figure. If it loses again by morning, have it mended. One that was driven flat is not filled: spare on.',
      caution: null,
    },
    judge: ({ unit }) => tirePressureSpec(unit),
    kneeling: true,
    takes: 40,
    worst: 'hold',
    sources: [published("unit's tire placard (49 CFR 571.110 S4.3)"), TIRES],
  }),
  defineCheck({
    id: 'tread-depth',
    rounds: BEFORE_TOWING,
    spread: 'wheel',
    station: 'wheel',
    names: ['tread', 'tread depth'],
    after: ON_ITS_WHEELS,
    expects: (scope) =>
      reading(
        {
          quantity: 'tread-depth',
          unit: '32nds',
          others: ['mm'],
          min: 0,
          max: 24,
          step: 0.5,
          forms: ['whole', 'half', 'thirty-second'],
          usual: [2, 9],
          metric: { unit: 'mm', step: 0.5, forms: ['whole', 'half', 'tenth', 'spoken-decimal'] },
        },
        scope,
      ),
    lines: {
      name: (scope) => `${place(scope)} tread depth`,
      ask: (scope) => `${at(scope, 'tread')}, the shallowest main groove. How deep?`,
      askTerse: (scope) => `${at(scope, 'tread')}?`,
      hint: (scope) =>
        scope.display === 'metric' ? 'Say the millimeters, like "five".' : 'Say the thirty-seconds, like "five thirty-seconds".',
      why: 'Worn tread floats on slush, and uneven wear shows a bent axle.',
      mend: 'Replace it at two thirty-seconds or less. Have uneven wear looked at before a new tire goes on.',
      caution: null,
    },
    judge: treadSpec(),
    kneeling: true,
    takes: 30,
    worst: 'hold',
    sources: [TIRES],
  }),
  defineCheck({
    id: 'sidewall',
    rounds: BOTH_DEPARTURES,
    spread: 'wheel',
    station: 'wheel',
    names: ['sidewall', 'sidewalls', 'valve stem'],
    after: ON_ITS_WHEELS,
    expects: state(
      ['no damage', 'sound', 'no cracks', 'clean', 'smooth', 'nothing wrong', 'no bulges', 'sidewall is good', 'whole'],
      [
        'cracked',
        'cracks',
        'bulge',
        'a bulge',
        'cut',
        'gouged',
        'cords showing',
        'weather cracks',
        'dry rot',
        'bubble',
        'a bubble',
        'cap missing',
        'valve is bent',
        'nail in it',
        'leaking',
      ],
    ),
    lines: {
      name: (scope) => `${place(scope)} sidewall`,
      ask: (scope) => `${at(scope, 'sidewall')}, both faces, and the valve. Is it free of cuts, cracks and bulges?`,
      askTerse: (scope) => `${at(scope, 'sidewall')} sound?`,
      hint: 'Say "no damage", or what you see, like "a bubble".',
      why: 'Trailer tires die of age and standing, at the sidewall first.',
      mend: 'A bulge, a cut to the cord or an open crack: spare on, do not tow on it.',
      caution: null,
    },
    judge: stateSpec('hold'),
    kneeling: true,
    takes: 20,
    worst: 'hold',
    sources: [TIRES],
  }),
  defineCheck({
    id: 'tire-date',
    rounds: BEFORE_TOWING,
    spread: 'wheel',
    station: 'wheel',
    applies: ({ unit, position, at: time }) => !isTireDateSettled(unit, position, time),
    names: ['date code', 'tire date', 'tire age', 'tire code'],
    after: ON_ITS_WHEELS,
    expects: (scope) => date('dot-week', { back: 16, ahead: 0 }, scope),
    lines: {
      name: (scope) => `${place(scope)} tire date`,
      ask: (scope) => `${at(scope, 'tire')}. Read the last four digits of its date code.`,
      askTerse: (scope) => `${at(scope, 'date code')}?`,
      hint: 'Say the four digits, week then year, like "thirty-six twenty-three".',
      why: 'Rubber ages in the sun and on the stand, however good the tread.',
      mend: 'Plan new tires by age. Put the code in the profile so that it is not asked again.',
      caution: null,
    },
    judge: tireAgeSpec(),
    kneeling: true,
    takes: 30,
    worst: 'hold',
    sources: [TIRE_CODE, COMMON_PRACTICE],
  }),
  defineCheck({
    id: SINCE_MOUNTED,
    rounds: EVERY_ROUND,
    spread: 'wheel',
    station: 'tow-vehicle',
    applies: ({ mounted }) => mounted !== undefined,
    names: ['miles since mounting', 'distance since mounting', 'trip meter'],
    after: ['held-still'],
    expects: (scope) =>
      reading(
        {
          quantity: SINCE_MOUNTED,
          unit: 'mi',
          others: ['km'],
          min: 0,
          max: 999,
          step: 1,
          forms: ['whole'],
          usual: [0, 60],
          metric: { unit: 'km', step: 1, forms: ['whole'] },
        },
        scope,
      ),
    lines: {
      name: (scope) => `distance on the ${place(scope).toLowerCase()} wheel`,
      ask: (scope) =>
        `How many ${scope.display === 'metric' ? 'kilometers' : 'miles'} since the ${place(scope).toLowerCase()} wheel went on?${odometerThen(scope)}`,
      askTerse: (scope) => `${scope.display === 'metric' ? 'Kilometers' : 'Miles'} on the ${place(scope).toLowerCase()} wheel?`,
      hint: 'Say the distance, like "twelve", or say skip if nobody knows.',
      why: 'A wheel put back on settles. Its lugs are pulled again at set distances.',
      mend: 'Set the trip meter to zero when a wheel goes on. Not known: pull the lugs at every stop.',
      caution: null,
    },
    judge: ({ mounted }) => sinceMountedSpec(mounted?.pulledM ?? 0),
    takes: 20,
    worst: 'ok',
    sources: [WHEELS, MAKERS_HANDBOOK],
  }),
  defineCheck({
    id: 'lugs-moved',
    rounds: EVERY_ROUND,
    spread: 'wheel',
    station: 'wheel',
    applies: ({ round, mounted }) => round !== 'stop-on-the-road' || mounted !== undefined,
    names: ['lugs', 'lug nuts', 'lug', 'nuts', 'torque'],
    after: [...ON_ITS_WHEELS, SINCE_MOUNTED, 'tire-pressure', 'ice-wheels', 'hub-heat'],
    expects: (scope) =>
      count(
        'lugs-moved',
        ['lug', 'lugs'],
        lugMax(scope),
        [
          'none moved',
          'all tight',
          'nothing moved',
          'all clicked',
          'no movement',
          'every one clicked',
          'all good and tight',
          'not one',
        ],
        scope.unit.wheels.lugs === null ? [] : ['all of them', 'every one moved', 'all moved'],
      ),
    lines: {
      name: (scope) => `${place(scope)} lugs`,
      ask: lugsAsk,
      askTerse: (scope) => `${at(scope, 'lugs')} moved?`,
      hint: 'Say "none moved", or how many, like "two".',
      why: 'A nut that turns before the click was loose. One loose nut loads the others until the wheel comes off.',
      mend: lugsMend,
      caution: (scope) =>
        scope.round === 'stop-on-the-road'
          ? 'A hot wheel reads wrong and burns. Let it cool first.'
          : 'Stand so that a slipping wrench lets you fall free. Socket all the way on.',
    },
    judge: ({ unit, mounted }) => lugsMovedSpec(unit, { mounted: mounted !== undefined }),
    kneeling: true,
    takes: 120,
    worst: 'hold',
    sources: [WHEELS, MAKERS_HANDBOOK],
  }),
  defineCheck({
    id: 'rim',
    rounds: BEFORE_TOWING,
    spread: 'wheel',
    station: 'wheel',
    names: ['rim', 'wheel', 'rims'],
    after: ON_ITS_WHEELS,
    expects: state(
      ['straight', 'no cracks', 'sound', 'clean', 'straight and clean', 'rim is good', 'no rust trails', 'not bent'],
      [
        'cracked',
        'bent',
        'rust trails',
        'rust streaks',
        'crack at a hole',
        'dented',
        'weld is cracked',
        'hole is worn',
        'stud is broken',
        'nut missing',
        'lug missing',
      ],
    ),
    lines: {
      name: (scope) => `${place(scope)} rim`,
      ask: (scope) => `${at(scope, 'rim')}. Is it straight, no cracks, no rust trails from the lugs?`,
      askTerse: (scope) => `${at(scope, 'rim')} straight?`,
      hint: 'Say "straight", or what you see, like "rust trails".',
      why: 'Rust trails and bright rings at the nuts mean that the wheel has been moving.',
      mend: 'Cracked or bent: spare on. Rust trails: block the frame, wheel off, look at studs and holes.',
      caution: null,
    },
    judge: stateSpec('hold'),
    kneeling: true,
    takes: 15,
    worst: 'hold',
    sources: [RIMS, WHEELS],
  }),
  defineCheck({
    id: 'hub',
    rounds: BOTH_DEPARTURES,
    spread: 'wheel',
    station: 'wheel',
    names: ['hub', 'bearing', 'hub cap', 'dust cap', 'grease cap'],
    after: ON_ITS_WHEELS,
    expects: ({ unit }) =>
      state(
        [
          'dry and tight',
          'cap on and dry',
          'dry',
          'cap is on',
          'no leak',
          'no play',
          'not leaking',
          'tight',
          ...(unit.wheels.bearings === 'oil-bath' ? ['oil is up', 'oil is clear'] : []),
        ],
        [
          'leaking',
          'cap missing',
          'grease on the wheel',
          'play',
          'has play',
          'wobbles',
          'it rocks',
          'wet',
          'cap is loose',
          'grinding',
          ...(unit.wheels.bearings === 'oil-bath' ? ['oil is low', 'oil is milky', 'no oil'] : []),
        ],
      ),
    lines: {
      name: (scope) => `${place(scope)} hub`,
      ask: (scope) =>
        scope.unit.wheels.bearings === 'oil-bath'
          ? `${at(scope, 'hub')}. Is the oil up to the line and clear, the cap dry?`
          : `${at(scope, 'hub')}. Is the cap on, dry and straight?`,
      askTerse: (scope) => `${at(scope, 'hub')} dry?`,
      hint: 'Say "dry and tight", or what is wrong, like "leaking".',
      why: 'A bearing that lost its grease seizes within miles.',
      mend: 'Do not tow on a leaking or rocking hub. Repack or replace the bearing and its seal.',
      caution: null,
    },
    judge: stateSpec('hold'),
    kneeling: true,
    takes: 20,
    worst: 'hold',
    sources: [published('commercial driver license manual, section 11 (hub seals not leaking)')],
  }),
  defineCheck({
    id: 'suspension',
    rounds: BEFORE_TOWING,
    spread: 'wheel',
    station: 'wheel',
    names: ['suspension', 'spring', 'springs', 'axle'],
    after: ON_ITS_WHEELS,
    expects: state(
      ['whole', 'no cracks', 'sound', 'all there', 'springs are good', 'nothing broken', 'tight'],
      [
        'broken leaf',
        'broken',
        'cracked',
        'shifted',
        'bolt missing',
        'loose bolt',
        'worn bushing',
        'leaf missing',
        'arm is bent',
        'sagging',
        'shackle worn',
      ],
    ),
    lines: {
      name: (scope) => `${place(scope)} suspension`,
      ask: (scope) => `Light behind the ${place(scope)} wheel. Spring, arm and bolts: is it all whole?`,
      askTerse: (scope) => `${at(scope, 'suspension')} whole?`,
      hint: 'Say "nothing broken", or what you see, like "broken leaf".',
      why: 'A broken leaf or bolt lets the axle walk and the tire rub.',
      mend: 'Do not tow on it. Have the part replaced.',
      caution: 'Look from the side. No head or hand under the frame.',
    },
    judge: stateSpec('hold'),
    kneeling: true,
    takes: 20,
    worst: 'hold',
    sources: [SUSPENSION],
  }),
  defineCheck({
    id: 'stub-grease',
    rounds: BEFORE_TOWING,
    spread: 'wheel',
    station: 'wheel',
    applies: (scope) => hasLift(scope) && (scope.unit.lift.axleStubs === 'greasable' || scope.unit.lift.axleStubs === null),
    names: ['axle stub', 'stub', 'stub grease', 'pivot', 'pivot grease'],
    after: ON_ITS_WHEELS,
    expects: state(
      [
        'greased',
        'fresh grease',
        'has grease',
        'grease shows',
        'it took grease',
        'full of grease',
        'just greased',
        'greased and tight',
      ],
      [
        'dry',
        'no grease',
        'will not take grease',
        'needs grease',
        'fitting broken',
        'fitting missing',
        'rusty',
        'loose bolt',
        'squeaks',
        'plugged',
      ],
    ),
    lines: {
      name: (scope) => `${place(scope)} axle stub`,
      ask: (scope) => `${at(scope, 'axle stub')}. Is there fresh grease at the pivot, and its bolt tight?`,
      askTerse: (scope) => `${at(scope, 'stub')} greased?`,
      hint: 'Say "greased", or "dry".',
      why: 'The whole unit swings up and down on this pivot.',
      mend: 'Pump until fresh grease shows at the edge, wipe it off. Replace a fitting that takes none.',
      caution: null,
    },
    judge: stateSpec('fix'),
    kneeling: true,
    takes: 30,
    worst: 'fix',
    sources: [MAKERS_HANDBOOK, COMMON_PRACTICE],
  }),
  defineCheck({
    id: 'stub-seal',
    rounds: BEFORE_TOWING,
    spread: 'wheel',
    station: 'wheel',
    applies: (scope) => hasLift(scope) && scope.unit.lift.axleStubs === 'sealed',
    names: ['axle stub', 'stub', 'stub seal', 'pivot', 'pivot seal'],
    after: ON_ITS_WHEELS,
    expects: state(
      ['seal is whole', 'sealed', 'whole', 'dry', 'seal is good', 'no play', 'tight'],
      ['seal is torn', 'torn', 'leaking', 'play', 'has play', 'loose', 'cracked', 'loose bolt', 'rusty', 'split'],
    ),
    lines: {
      name: (scope) => `${place(scope)} axle stub`,
      ask: (scope) => `${at(scope, 'axle stub')}. Is its seal whole, no play and no rust weeping out?`,
      askTerse: (scope) => `${at(scope, 'stub')} seal whole?`,
      hint: 'Say "seal is whole", or what you see, like "torn".',
      why: 'A sealed pivot takes no grease. Once its seal is torn it only wears.',
      mend: 'Have the pivot replaced. Do not force grease into a sealed one.',
      caution: null,
    },
    judge: stateSpec('fix'),
    kneeling: true,
    takes: 20,
    worst: 'fix',
    sources: [MAKERS_HANDBOOK, COMMON_PRACTICE],
  }),
  defineCheck({
    id: 'ice-wheels',
    rounds: BEFORE_LEAVING,
    spread: 'wheel',
    station: 'wheel',
    names: ['ice in the wheel', 'wheel ice', 'wheel'],
    after: ON_ITS_WHEELS,
    expects: state(
      ['clear of ice', 'clear', 'no ice', 'clean', 'knocked out', 'ice is out', 'free', 'broken loose', 'not frozen'],
      [
        'ice in it',
        'packed with ice',
        'frozen',
        'frozen to the ice',
        'frozen down',
        'ice in the rim',
        'ice on the brake',
        'cannot clear it',
        'iced up',
        'full of slush',
      ],
    ),
    lines: {
      name: (scope) => `${place(scope)} wheel ice`,
      ask: (scope) => `${at(scope, 'wheel')}. Knock the ice out of rim, hub and brake. Is it clear?`,
      askTerse: (scope) => `${at(scope, 'wheel')} clear?`,
      hint: 'Say "clear of ice", or "frozen".',
      why: 'Ice in a rim shakes like a bent axle. A wheel frozen down tears its lugs or slides.',
      mend: 'Break it out with a wooden mallet, not a torch. Never near a valve stem or brake wire with iron.',
      caution: 'Eyes shut or covered, ice flies.',
    },
    judge: stateSpec('hold'),
    kneeling: true,
    takes: 60,
    worst: 'hold',
    sources: [COMMON_PRACTICE],
  }),
  defineCheck({
    id: 'hub-heat',
    rounds: ON_THE_ROAD,
    spread: 'wheel',
    station: 'wheel',
    names: ['hub', 'hub heat', 'bearing', 'hub temperature'],
    after: ON_ITS_WHEELS,
    expects: state(
      ['cool', 'warm', 'hand warm', 'cold', 'just warm', 'barely warm', 'same as the other', 'cool to the touch', 'lukewarm'],
      [
        'hot',
        'too hot',
        'too hot to touch',
        'smoking',
        'smells hot',
        'hotter than the other',
        'very hot',
        'burning',
        'cannot touch it',
        'grease is out',
      ],
    ),
    lines: {
      name: (scope) => `${place(scope)} hub heat`,
      ask: (scope) => `${at(scope, 'hub')}. Back of the bare hand near it first. Is it cool or hand warm?`,
      askTerse: (scope) => `${at(scope, 'hub')} cool?`,
      hint: 'Say "cold", "warm" or "too hot".',
      why: 'A bearing or a dragging brake announces itself by heat.',
      mend: 'Too hot to hold: stop here. Let it cool, and have bearing and brake looked at before you go on.',
      caution: 'It may be hot enough to burn. Do not grab it.',
    },
    judge: stateSpec('hold'),
    kneeling: true,
    takes: 15,
    worst: 'hold',
    sources: [COMMON_PRACTICE],
  }),
  defineCheck({
    id: 'wheel-look',
    rounds: ON_THE_ROAD,
    spread: 'wheel',
    station: 'wheel',
    names: ['tire', 'tires', 'lugs', 'wheel', 'lug nuts'],
    after: ON_ITS_WHEELS,
    expects: state(
      [
        'full and tight',
        'all there',
        'good and round',
        'tire is full',
        'full',
        'nothing missing',
        'all nuts there',
        'round and full',
        'sound',
      ],
      [
        'soft',
        'low',
        'flat',
        'going flat',
        'nut missing',
        'lug missing',
        'loose',
        'rust trails',
        'shiny ring',
        'bulge',
        'rubbing',
        'cut',
        'hissing',
      ],
    ),
    lines: {
      name: (scope) => `${place(scope)} tire and lugs`,
      ask: (scope) => `${at(scope, 'wheel')}. Is the tire full, every lug nut there, no shiny rings?`,
      askTerse: (scope) => `${at(scope, 'tire')} full?`,
      hint: 'Say "full and tight", or what is wrong, like "soft".',
      why: 'A tire that lost air on the road heats up in the next few miles.',
      mend: 'Never let air out of a warm tire. Soft: find the leak, or spare on. Loose nuts: torque them all.',
      caution: null,
    },
    judge: stateSpec('hold'),
    takes: 15,
    worst: 'hold',
    sources: [TIRES, WHEELS],
  }),
];
