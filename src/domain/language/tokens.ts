/**
 * From a transcript to words: lower case, contractions opened, digits and units that were written together taken apart,
 * written fractions kept whole. Every word remembers the piece of text it came from, so that the screen can show what
 * was used and what was passed over.
 */

/** A piece of the transcript as it was written. */
export interface Piece {
  readonly text: string;
  /** Offset in the transcript. */
  readonly start: number;
}

export interface Word {
  /** Normalised: lower case, no apostrophes; digits as written without thousands separators. */
  readonly word: string;
  /** `digits`: a written number; `fraction`: "5/32"; `clock`: "12:30"; `mark`: punctuation that ends a group. */
  readonly kind: 'word' | 'digits' | 'fraction' | 'clock' | 'mark';
  /** Index into {@link Tokens.pieces}. */
  readonly piece: number;
}

export interface Tokens {
  readonly pieces: readonly Piece[];
  readonly words: readonly Word[];
  /** True where the transcript ends in a question mark. */
  readonly asks: boolean;
}

/** Nothing that a person says in answer to a check is longer; what follows is not looked at. */
export const MAX_TEXT_LENGTH = 2000;

const CONTRACTIONS: ReadonlyMap<string, readonly string[]> = new Map(
  Object.entries({
    wont: 'will not',
    cant: 'can not',
    cannot: 'can not',
    aint: 'is not',
    isnt: 'is not',
    arent: 'are not',
    wasnt: 'was not',
    werent: 'were not',
    dont: 'do not',
    doesnt: 'does not',
    didnt: 'did not',
    hasnt: 'has not',
    havent: 'have not',
    hadnt: 'had not',
    couldnt: 'could not',
    wouldnt: 'would not',
    shouldnt: 'should not',
    its: 'it is',
    thats: 'that is',
    theres: 'there is',
    heres: 'here is',
    theyre: 'they are',
    youre: 'you are',
    im: 'i am',
    ive: 'i have',
    whats: 'what is',
    wheres: 'where is',
    lets: 'let us',
    shes: 'she is',
    hes: 'he is',
    gonna: 'going to',
    wanna: 'want to',
    gotta: 'got to',
    lemme: 'let me',
    gimme: 'give me',
    dunno: 'do not know',
    kinda: 'kind of',
    sorta: 'sort of',
    alright: 'okay',
    allright: 'okay',
    uhhuh: 'yes',
  }).map(([from, to]) => [from, to.split(' ')]),
);

/** Endings after an apostrophe: "one's" is "one is". */
const ENDINGS: ReadonlyMap<string, string> = new Map(
  Object.entries({ s: 'is', re: 'are', ve: 'have', ll: 'will', m: 'am', d: 'would' }),
);

/** Other spellings of one word. */
const SPELLINGS: ReadonlyMap<string, string> = new Map(
  Object.entries({
    ok: 'okay',
    okey: 'okay',
    yep: 'yes',
    yup: 'yes',
    yeah: 'yes',
    yea: 'yes',
    ya: 'yes',
    yah: 'yes',
    aye: 'yes',
    affirmative: 'yes',
    nah: 'nope',
    naw: 'nope',
    negatory: 'nope',
    fourty: 'forty',
    fivty: 'fifty',
    ninty: 'ninety',
    eigth: 'eighth',
    em: 'them',
    niner: 'nine',
    fife: 'five',
    tyre: 'tire',
    tyres: 'tires',
    centre: 'center',
    metre: 'meter',
    metres: 'meters',
    litre: 'liter',
    litres: 'liters',
    millimetre: 'millimeter',
    millimetres: 'millimeters',
    centimetre: 'centimeter',
    centimetres: 'centimeters',
    burnt: 'burned',
    broke: 'broken',
    umm: 'um',
    uhh: 'uh',
    uhm: 'um',
    hmm: 'hm',
    hmmm: 'hm',
  }),
);

const FRACTION_SIGNS: ReadonlyMap<string, string> = new Map([
  ['½', '1/2'],
  ['¼', '1/4'],
  ['¾', '3/4'],
  ['⅛', '1/8'],
  ['⅜', '3/8'],
  ['⅝', '5/8'],
  ['⅞', '7/8'],
  ['⅓', '1/3'],
  ['⅔', '2/3'],
]);

const SPOKEN_SIGNS: ReadonlyMap<string, string> = new Map([
  ['°', 'degrees'],
  ['º', 'degrees'],
  ['%', 'percent'],
  ['″', 'inches'],
  ['"', 'inches'],
  ['”', 'inches'],
  ['+', 'plus'],
  ['&', 'and'],
  ['~', 'about'],
  ['≈', 'about'],
]);

const PIECE =
  /(\d+\/\d+)(?:nds?(?![a-z])|ths?(?![a-z])|s(?![a-z]))?|(\d{1,2}:\d{2}(?!\d))|(32nds?|32s(?![a-z]))|(\d{1,3}(?:,\d{3})+(?!\d)(?:\.\d+)?|\d+(?:\.\d+)?|\.\d+)|([½¼¾⅛⅜⅝⅞⅓⅔])|(\p{L}[\p{L}\p{M}]*(?:['’`ʼ]\p{L}+)*)|([°º%″"”+&~≈])|([-−–—])|([,.;:!?])/giu;

const isLetterOrDigit = (char: string | undefined): boolean => char !== undefined && /[\p{L}\d½¼¾]/u.test(char);

const spelled = (word: string): string => SPELLINGS.get(word) ?? word;

/** Words of one written word, contractions opened. */
function wordsOf(written: string): readonly string[] {
  const plain = written.toLowerCase().replace(/[’`ʼ]/g, "'");
  const bare = plain.replaceAll("'", '');
  const known = CONTRACTIONS.get(bare);
  if (known) return known;
  const negated = /^(\p{L}+)n't$/u.exec(plain);
  if (negated?.[1]) return [negated[1], 'not'];
  const apostrophe = plain.lastIndexOf("'");
  if (apostrophe > 0) {
    const more = ENDINGS.get(plain.slice(apostrophe + 1));
    if (more !== undefined) return [spelled(plain.slice(0, apostrophe).replaceAll("'", '')), more];
  }
  return [spelled(bare)];
}

/** "uh huh" is a yes and "uh uh" a no; written apart they are two noises. */
function withGrunts(words: readonly Word[]): readonly Word[] {
  if (!words.some(({ word }) => GRUNT_STARTS.has(word))) return words;
  const made: Word[] = [];
  for (let at = 0; at < words.length; at += 1) {
    const word = words[at];
    const next = words[at + 1];
    if (!word) continue;
    const said = next?.kind === 'word' && next.piece !== word.piece ? GRUNTS.get(`${word.word} ${next.word}`) : undefined;
    made.push(said === undefined ? word : { ...word, word: said });
    if (said !== undefined) at += 1;
  }
  return made;
}

const GRUNT_STARTS = new Set(['uh', 'mm', 'nuh', 'all']);

const GRUNTS: ReadonlyMap<string, string> = new Map([
  ['uh huh', 'yes'],
  ['all right', 'okay'],
  ['mm hm', 'yes'],
  ['mm hmm', 'yes'],
  ['uh uh', 'nope'],
  ['nuh uh', 'nope'],
]);

/**
 * Take a transcript apart. Linear in its length; only the first {@link MAX_TEXT_LENGTH} characters are read.
 * @returns words in order; never throws
 */
export function tokenize(transcript: string): Tokens {
  const text = transcript.slice(0, MAX_TEXT_LENGTH);
  const pieces: Piece[] = [];
  const words: Word[] = [];
  const push = (start: number, written: string, made: readonly string[], kind: Word['kind'] = 'word') => {
    pieces.push({ text: written, start });
    for (const word of made) words.push({ word, kind, piece: pieces.length - 1 });
  };
  for (const match of text.matchAll(PIECE)) {
    const [whole, fraction, clock, thirtySeconds, digits, sign, letters, spokenSign, dash, mark] = match;
    const start = match.index;
    const before = text[start - 1];
    const after = text[start + whole.length];
    if (fraction !== undefined) push(start, whole, [fraction], 'fraction');
    else if (clock !== undefined) push(start, whole, [clock], 'clock');
    else if (thirtySeconds !== undefined) push(start, whole, ['32nds']);
    else if (digits !== undefined) {
      const plain = digits.replaceAll(',', '');
      push(start, whole, [plain.startsWith('.') ? `0${plain}` : plain], 'digits');
    } else if (sign !== undefined) push(start, whole, [FRACTION_SIGNS.get(sign) ?? ''], 'fraction');
    else if (letters !== undefined) push(start, whole, wordsOf(letters));
    else if (spokenSign !== undefined) {
      const spoken = SPOKEN_SIGNS.get(spokenSign) ?? '';
      // A quotation mark is an inch sign only behind a number.
      if (spoken !== 'inches' || /[\d½¼¾⅛⅜⅝⅞]/.test(before ?? '')) push(start, whole, [spoken]);
    } else if (dash !== undefined) {
      const nextIsNumber = /[\d.½¼¾]/.test(after ?? '');
      if (nextIsNumber && !isLetterOrDigit(before)) push(start, whole, ['minus']);
      else if (nextIsNumber && /\d/.test(before ?? '')) push(start, whole, ['-'], 'mark');
      // Between letters it joins ("sixty-two"); alone between spaces it is a pause.
      else if (!isLetterOrDigit(before) && !isLetterOrDigit(after)) push(start, whole, [','], 'mark');
    } else if (mark !== undefined) push(start, whole, [mark === ',' || mark === ';' || mark === ':' ? ',' : '.'], 'mark');
  }
  return { pieces, words: withGrunts(words), asks: /\?\s*$/.test(text) };
}

const phraseWords = new Map<string, readonly string[]>();

/** Words of a phrase from a declaration, without marks. Kept, since the same phrases come with every utterance. */
export function plainWords(phrase: string): readonly string[] {
  const known = phraseWords.get(phrase);
  if (known) return known;
  const made = tokenize(phrase).words.flatMap(({ word, kind }) => (kind === 'mark' ? [] : [word]));
  if (phraseWords.size < 5000) phraseWords.set(phrase, made);
  return made;
}
