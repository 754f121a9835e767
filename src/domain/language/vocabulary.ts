/**
 * Everyday words and how they count around an answer. Anything that is in none of these lists is talk about something
 * else, and a number in such talk is not a reading.
 */

const set = (text: string): ReadonlySet<string> => new Set(text.split(/\s+/).filter((word) => word !== ''));

/** Say nothing about the answer. Verbs and nouns of measuring are here; nouns of the world are not. */
export const FILLERS = set(`
  a an the this that these those it its she they them there here now so then well okay um uh er ah eh hm oh o huh hey
  i me my we us our you your mine is are was were be been being am has have had having got get gets getting gotten
  do does did doing done let at on in of for to from with by and also plus as like just only still exactly precisely
  right even flat sharp straight dead spot nose dot money button solid good nice clean fine all too very really pretty
  some more same still yet again already today currently reads read reading readings say says said saying show shows
  showing shown looks look looking sits sit sitting sat stands stand standing comes come coming came up goes measures
  measure measured measuring measurement gives giving pulls pulled pulling hits hit see sees seeing seen find found hear
  hearing heard gauge gauges needle dial meter multimeter voltmeter tester display screen scale thermometer tape ruler
  stick probe wrench thermostat placard label sticker count counted counting asking asks calls called thinnest thickest
  shallowest deepest lowest highest worst weighs weighing weigh bottom needle's readout stamped marked printed labeled
  low high worn weak soft full hot outside edge inner outer shoulder groove away every thin fresh wearing warmed ends ended number value figure figures digital analog cold warm total
  please thanks thank sir boss man dude guys bud buddy copy roger yes check checked okey alrighty gosh boy wow jeez geez
  shoot darn cool great perfect awesome sweet good yeah first one next other last final left-over anyway
  what which when where how because
  after before over under out off
  mine ours his her hers
`);

/** Make a number less than certain. */
export const HEDGE_WORDS = set(`
  about around roughly approximately approx maybe perhaps probably possibly almost nearly guess guessing think believe
  reckon suppose ballpark estimate estimated ish sorta kinda somewhere near close thereabouts supposedly barely
`);

/** Several words that hedge. The longest first. */
export const HEDGE_PHRASES: readonly (readonly string[])[] = [
  'plus or minus',
  'give or take',
  'more or less',
  'a hair over',
  'a hair under',
  'a hair above',
  'a hair below',
  'hair over',
  'hair under',
  'a little over',
  'a little under',
  'a little above',
  'a little below',
  'little over',
  'little under',
  'a bit over',
  'a bit under',
  'bit over',
  'bit under',
  'a touch over',
  'a touch under',
  'touch over',
  'touch under',
  'a tad over',
  'a tad under',
  'a tick over',
  'a tick under',
  'slightly over',
  'slightly under',
  'slightly above',
  'slightly below',
  'just over',
  'just under',
  'just above',
  'just below',
  'just shy of',
  'a hair shy of',
  'shy of',
  'not quite',
  'close to',
  'and change',
  'and a bit',
  'or so',
  'or thereabouts',
  'or thereabout',
  'call it',
  'lets say',
  'i would say',
  'would say',
  'i figure',
  'in the neighborhood of',
  'in the ballpark of',
  'kind of',
  'sort of',
  'as far as i can tell',
  'as best i can tell',
  'if i read it right',
  'hard to read',
  'i want to say',
].map((phrase) => phrase.split(' '));

/** What was said before is taken back. */
export const CORRECTION_PHRASES: readonly (readonly string[])[] = [
  'no wait no',
  'no wait',
  'wait no',
  'wait a minute',
  'no sorry',
  'sorry no',
  'oh no',
  'i mean',
  'i meant',
  'make that',
  'make it',
  'scratch that',
  'strike that',
  'correct that',
  'check that',
  'my mistake',
  'my bad',
  'let me correct',
  'or rather',
  'no make that',
  'no i mean',
  'excuse me',
  'hold on',
  'hang on',
].map((phrase) => phrase.split(' '));

export const CORRECTION_WORDS = set('no nope wait sorry correction actually rather oops whoops nevermind');

export const YES_WORDS = set('yes correct affirmative sure exactly absolutely definitely indeed yessir yes');
export const NO_WORDS = set('no nope wrong incorrect negative');

/** People and things that have nothing to do with a check: talk beside the work. */
export const ASIDE_WORDS = set(`
  dog dogs cat kid kids wife husband mom dad grandpa grandma uncle brother sister buddy buddies friend friends neighbor guy guys
  dinner lunch breakfast supper coffee beer beers pizza sandwich food snack thermos drink
  phone call text email radio tv television music game score movie song channel
  fish fishing walleye perch pike crappie bass trout panfish minnow minnows bait lure lures jig rod limit bite bites biting auger
  money bucks dollars dollar cents price cost paid pay lottery
  tomorrow yesterday tonight morning evening afternoon monday tuesday wednesday thursday friday saturday sunday weekend
  week month year years birthday clock oclock pm weather forecast snowing windy blizzard
  glove gloves mitten mittens boots boot hat coat jacket finger fingers knee knees toe toes
  home house work job boss school church town store gas-station bar restaurant hotel
  joke funny laugh love hate wish remember forgot forget
`);
