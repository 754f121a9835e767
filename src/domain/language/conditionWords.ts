/**
 * What words say of the condition of a thing, whichever check is asked: good or bad by themselves, or good on one check
 * and bad on the next (a loose lug, a loose cable).
 */

export type Polarity = 'ok' | 'problem';

const list = (text: string): readonly string[] => text.split(/\s+/).filter((word) => word !== '');

/** By themselves good; stems as {@link stem} makes them are added. */
export const OK_WORDS = list(`
  good great perfect excellent fine okay ok solid sound intact secure secured undamaged healthy proper properly correct normal
  clean clear works working work functional functioning operational latched locked pinned fastened attached connected
  plugged hooked crossed stowed sealed seated engaged strapped bolted clamped lit bright straight snug firm pass passed passes
  beautiful dandy peachy golden super spotless flawless satisfactory acceptable serviceable shipshape clipped chained buckled
  closed shut thrown set mounted folded aligned whole smooth holding holds held unbroken undented uncracked
`);

export const PROBLEM_WORDS = list(`
  bad loose broken frayed fraying missing gone leaking leaks leaky frozen froze bent dead blown rusted rusty rust worn
  damaged damage stuck jammed seized flat torn ripped split chafed corroded corrosion unlatched unlocked unpinned unhooked
  disconnected undone dragging hanging wobbly wobbles wobble wobbling rattles rattling rattle kinked kink twisted crooked
  dented dent bulging bulge bulges dim flickers flickering flicker slipping slips stripped sheared snapped crushed pinched
  cracked crack cracks leak drip drips dripping weeping hissing smoking smokes smell smells wrong problem problems trouble
  issue issues fault faulty failed fails fail failing defective busted shot toast trashed ruined junk unplugged misaligned
  unseated detached unfastened unsecured unstrapped unsafe cut cuts gouged gouge gash hole holes punctured nail pitted
  flopping flapping sagging shifted warped swollen bubble bubbles blistered peeling rotten rotted chewed shredded unraveling
  unraveled scored grooved grinding grinds squeals squealing noisy plugged-up clogged blocked iced icy burned melted scorched
  falling fell popped unsound weak messed goofed hosed screwed ajar cockeyed unhooked damp crushed nicked nick scraped
`);

/** Words that hang together: where a check calls one of a row good or bad, the others of the row follow. */
export const FAMILIES: readonly (readonly [readonly string[], readonly string[]])[] = [
  [
    list('tight snug firm taut stiff rigid tense'),
    list('loose slack limp floppy sloppy flops flopping droopy drooping hanging hangs dangling dangles'),
  ],
  [list('moves budges wiggles shifts'), []],
  [list('closed shut'), list('open opened ajar')],
  [list('locked latched'), list('unlocked unlatched')],
  [list('on'), list('off')],
  [list('up raised'), list('down lowered')],
  [list('in'), list('out')],
  [list('dry'), list('wet damp soaked soggy moist frost frosty icy')],
  [list('cool cold lukewarm'), list('hot scorching burning')],
  [list('full'), list('empty low soft flat')],
  [list('free loosened freed budges'), list('frozen stuck seized')],
  [list('loud'), list('silent quiet')],
  [list('clear'), list('blocked covered')],
  [list('lit bright burning'), list('dark dim unlit')],
];

/** Good and bad where the check says nothing of the row. */
export const FAMILY_DEFAULTS: Readonly<Record<string, Polarity>> = {
  tight: 'ok',
  snug: 'ok',
  firm: 'ok',
  loose: 'problem',
  slack: 'problem',
  sloppy: 'problem',
  floppy: 'problem',
  closed: 'ok',
  shut: 'ok',
  open: 'problem',
  opened: 'problem',
  ajar: 'problem',
  locked: 'ok',
  latched: 'ok',
  unlocked: 'problem',
  unlatched: 'problem',
  dry: 'ok',
  full: 'ok',
  empty: 'problem',
  low: 'problem',
  soft: 'problem',
  flat: 'problem',
  frozen: 'problem',
  stuck: 'problem',
  seized: 'problem',
  blocked: 'problem',
  covered: 'problem',
  clear: 'ok',
  lit: 'ok',
  bright: 'ok',
  dark: 'problem',
  dim: 'problem',
  unlit: 'problem',
  hot: 'problem',
  scorching: 'problem',
  burning: 'problem',
};

/** Several words with a meaning of their own. */
export const FIXED: readonly (readonly [phrase: string, polarity: Polarity])[] = [
  ['all good', 'ok'],
  ['in place', 'ok'],
  ['in order', 'ok'],
  ['good to go', 'ok'],
  ['ready to go', 'ok'],
  ['ready to roll', 'ok'],
  ['good shape', 'ok'],
  ['nothing wrong', 'ok'],
  ['not bad', 'ok'],
  ['no problem', 'ok'],
  ['looks good', 'ok'],
  ['as it should', 'ok'],
  ['like it should', 'ok'],
  ['like new', 'ok'],
  ['good as new', 'ok'],
  ['thumbs up', 'ok'],
  ['checks out', 'ok'],
  ['rock solid', 'ok'],
  ['part way', 'problem'],
  ['partway', 'problem'],
  ['partially', 'problem'],
  ['partly', 'problem'],
  ['bulb out', 'problem'],
  ['bulb is out', 'problem'],
  ['light is out', 'problem'],
  ['lights are out', 'problem'],
  ['lamp is out', 'problem'],
  ['lamps are out', 'problem'],
  ['marker is out', 'problem'],
  ['blinker is out', 'problem'],
  ['burned out', 'problem'],
  ['burn out', 'problem'],
  ['blown out', 'problem'],
  ['gone out', 'problem'],
  ['out of order', 'problem'],
  ['came off', 'problem'],
  ['fell off', 'problem'],
  ['fell out', 'problem'],
  ['falling off', 'problem'],
  ['falling apart', 'problem'],
  ['hanging off', 'problem'],
  ['dry rot', 'problem'],
  ['dry rotted', 'problem'],
  ['metal fatigue', 'problem'],
  ['needs work', 'problem'],
  ['needs fixing', 'problem'],
  ['needs grease', 'problem'],
  ['needs replacing', 'problem'],
  ['needs replaced', 'problem'],
  ['needs to be replaced', 'problem'],
  ['needs to be fixed', 'problem'],
  ['needs a new', 'problem'],
  ['needs air', 'problem'],
  ['has play', 'problem'],
  ['play in it', 'problem'],
  ['acting up', 'problem'],
  ['no good', 'problem'],
  ['not good', 'problem'],
  ['not right', 'problem'],
  ['not great', 'problem'],
  ['thumbs down', 'problem'],
  ['half way', 'problem'],
  ['halfway', 'problem'],
  ['worn out', 'problem'],
  ['metal to metal', 'problem'],
];

/** Words that judge the whole, whatever was asked. */
export const JUDGING_WORDS = [
  ...list('good great perfect excellent fine okay'),
  'nothing wrong',
  'no problem',
  'no problems',
  'all good',
  'good shape',
  'looks good',
  'like new',
];

/** Parts of a unit: they say where, not how. */
export const PART_WORDS = new Set(
  list(`
  pin pins keeper keepers clip clips clevis chain chains hook hooks link links cable cables strand strands wire wires drum winch
  pulley pulleys sheave tire tires wheel wheels rim rims lug lugs nut nuts stud studs hub hubs cap caps bearing bearings seal
  seals spring springs leaf leaves shackle shackles bushing bushings coupler ball latch latches lever jack handle plug cord socket
  lamp lamps light lights bulb bulbs lens lenses marker markers door doors window windows vent vents cover covers hinge hinges
  bolt bolts strap straps bracket brackets mount mounts screw screws hose hoses regulator valve valves tank tanks bottle cylinder
  cylinders alarm alarms battery batteries detector awning arm arms ramp step steps spare frame weld welds axle axles corner
  corners side sides end ends edge edges bottom top middle front rear left right back tongue hitch tread sidewall sidewalls stem
  pressure gauge needle line lines fitting fittings connector connectors contact contacts terminal terminals switch button
  sensor horn deadbolt bolt lock locks knob hatch hole holes floor wall roof chimney stack furnace heater stove burner pilot
  thermostat cupboard cupboards cabinet cabinets drawer drawers bunk bunks table shelf gear load extinguisher reflector
  reflectors plate tail turn signal signals blinker blinkers flasher flashers brake brakes stabilizer stabilizers chock chocks
  crank spindle stub pivot grease oil fluid paint metal rubber groove flange thread threads ground lead one ones two three
  clamp clamps guard tube tubes leg legs foot pad pads u-bolt rope blade inch inches spot spots place
  antenna antennas ladder generator board boards block blocks snow ice slush mud salt water frost dirt debris road
  `),
);

/** Adverbs and the like: they neither add nor take away. */
export const DEGREE_WORDS = new Set(
  list(`
  sure certainly definitely absolutely really very quite pretty fully completely totally all the way nice nicely too so still now just even yet though super extra
  little bit tiny slightly somewhat kind badly real good perfectly properly firmly tightly entirely completely here there
  together well already right again also both every each everything anything something thing things it them they that this
  `),
);

/** Nouns of harm: "no cracks" denies them; "no" before an adjective is an answer of its own. */
export const HARM_NOUNS = new Set(
  list(`
  crack cracks leak leaks damage damages problem problems issue issues trouble rust corrosion play wobble movement wear kink
  kinks dent dents bulge bulges bubble bubbles cut cuts gouge gouges nick nicks hole holes tear tears rip rips fray frays drip
  drips smell smells sound noise noises slack tension ice snow frost water moisture rot grinding fault faults defect defects
  looseness sag bend bends break breaks nail nails rattle rattles smoke flames error errors alarm alarms sign signs
  `),
);

/**
 * A word without its ending, good enough to hold "cracks", "cracked" and "cracking" together.
 * Where the bare word is a part, what was done with it stays apart: "pins" are things and "pinned" is a state.
 * Short words are left alone: "is", "bed", "ring".
 */
export function stem(word: string): string {
  if (word.length < 4) return word;
  const irregular = IRREGULAR.get(word);
  if (irregular) return irregular;
  for (const ending of ['ing', 'ed', 'es', 's', 'ly']) {
    if (!word.endsWith(ending)) continue;
    const cut = word.slice(0, -ending.length);
    if (cut.length < 3) continue;
    if (ending === 's' && /[su]$/.test(cut)) continue;
    const undoubled = /([bdgmnprt])\1$/.test(cut) && ending !== 's' && ending !== 'ly' ? cut.slice(0, -1) : cut;
    if (ending === 'ed' && (PART_WORDS.has(undoubled) || PART_WORDS.has(cut) || PART_WORDS.has(`${cut}e`)))
      return doneWith(undoubled);
    return undoubled.endsWith('e') ? undoubled.slice(0, -1) : undoubled;
  }
  return word.endsWith('e') ? word.slice(0, -1) : word;
}

/** The state that comes of using a part: "latch" gives that of "latched". */
export const doneWith = (part: string): string => `${part.endsWith('e') ? part.slice(0, -1) : part}+ed`;

const IRREGULAR: ReadonlyMap<string, string> = new Map(
  Object.entries({
    worn: 'worn',
    wear: 'wear',
    torn: 'torn',
    bent: 'bent',
    froze: 'frozen',
    freezing: 'frozen',
    freeze: 'frozen',
    broke: 'broken',
    break: 'broken',
    breaks: 'broken',
    lit: 'lit',
    lights: 'lights',
    holds: 'hold',
    held: 'hold',
    holding: 'hold',
    shut: 'shut',
    fastened: 'fasten',
    opened: 'open',
    tightened: 'tighten',
    loosened: 'loosen',
    came: 'come',
    comes: 'come',
    fell: 'fall',
    pulleys: 'pulley',
    missing: 'miss',
    nothing: 'nothing',
    something: 'something',
    anything: 'anything',
    everything: 'everything',
    during: 'during',
    string: 'string',
    spring: 'spring',
    springs: 'spring',
    dies: 'dead',
    died: 'dead',
    used: 'used',
    speed: 'speed',
    thrown: 'throw',
    threw: 'throw',
  }),
);
