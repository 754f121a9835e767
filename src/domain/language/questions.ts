/** What is asked when an answer is not clear: short, more helpful each time, never the same sentence three times. */
import type { Expects } from '../checks/expects.ts';
import type { PlannedCheck } from '../plan/plan.ts';
import type { Meaning, UnclearWhy } from './meaning.ts';
import { speakPosition } from './positions.ts';
import { speakReading, spokenUnit } from './readBack.ts';
import { speakDigits, speakNumber, teenTyTwin } from './speakNumber.ts';

const BUTTONS = [
  'The buttons on the screen work too.',
  'You can press the answer on the screen, or say "skip it".',
  'Use the buttons, or say "hold on" and come back to it.',
] as const;

const pick = (lines: readonly string[], index: number): string => lines[Math.min(index, lines.length - 1)] ?? '';

/**
 * Asked when something was heard and nothing in it fitted.
 * @param asked how often it was asked before: 0 asks again, 1 says what can be said, then the buttons are offered in turn
 */
export function askAgainLine(check: Pick<PlannedCheck, 'lines'>, asked: number): string {
  const hint = check.lines.hint;
  if (asked <= 0) return 'Say again?';
  if (asked === 1) return `I didn't get that. ${hint}`;
  return asked === 2 ? `${hint} ${BUTTONS[0]}` : (BUTTONS[1 + ((asked - 3) % 2)] ?? BUTTONS[1]);
}

/** What may be said at any time. */
export function commandHelp(style: 'full' | 'terse'): string {
  return style === 'terse'
    ? 'Also: say again, go back, skip it, hold on, undo, why, make a note.'
    : 'You can also say: say again, go back, skip it and why, hold on, undo that, where are we, why, make a note, louder, quieter, stop.';
}

/** 'Say the pressure in pounds, like "sixty-two".': what can be said, from the declaration alone. */
export function hintFor(expects: Expects): string {
  switch (expects.kind) {
    case 'reading': {
      const middle = Math.round((expects.usual.min + expects.usual.max) / 2);
      const unit = spokenUnit(expects.unit, 2);
      return `Say the number${unit === '' ? '' : ` of ${unit}`}, like "${speakNumber(middle, expects.forms)}".`;
    }
    case 'count':
      return `Say how many, like "${expects.nonePhrases[0] ?? 'none'}" or "two".`;
    case 'state':
      return `Say "${expects.ok[0] ?? 'okay'}", or what is wrong, like "${expects.problem[0] ?? 'not okay'}".`;
    case 'choice':
      return `Say ${orList(expects.options.slice(0, 4).map(({ label }) => `"${label}"`))}.`;
    case 'date':
      return expects.form === 'dot-week'
        ? 'Say the four digits, week then year, like "thirty-six twenty-three".'
        : 'Say the month and the year, like "March twenty twenty-four".';
  }
}

const orList = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;

/** The first question after an unclear answer, by what was unclear. */
const FIRST: Readonly<Record<UnclearWhy, readonly [full: string, terse: string]>> = {
  chatter: ['Say again?', 'Again?'],
  empty: ['Say again?', 'Again?'],
  'no-value': ['I heard you, but no answer in it. Say again?', 'Answer?'],
  'out-of-range': ['That number cannot be. Say it again?', 'Cannot be. Again?'],
  'wrong-unit': ['That is another unit. Say it again?', 'Which unit?'],
  alternatives: ['Which of them is it?', 'Which one?'],
  contradiction: ['I heard two different things. Which is it?', 'Which is it?'],
  range: ['I need one number. What does it read?', 'One number?'],
  'repeated-position': ['The same place twice. Say place and value again?', 'Same place twice. Again?'],
  'unknown-position': ['That place is not on this unit. Which one?', 'Which place?'],
  'not-a-step': ['That is finer than it is read. Say it again?', 'Again?'],
  incomplete: ['I got only a part of that. Say all of it again?', 'All of it again?'],
  ambiguous: ['I could not tell which. Say it in other words?', 'Other words?'],
  'no-last': ['There is nothing from last time. What is it now?', 'Nothing from last time. Now?'],
};

/**
 * What to ask after an unclear answer.
 * @param asked how often this was asked before
 */
export function unclearQuestion(why: UnclearWhy, expects: Expects, asked: number, style: 'full' | 'terse'): string {
  const first = FIRST[why][style === 'full' ? 0 : 1];
  if (asked <= 0) return first;
  const hint = hintFor(expects);
  if (asked === 1) return why === 'chatter' || why === 'empty' ? `I didn't get that. ${hint}` : hint;
  return asked === 2 ? `${hint} ${BUTTONS[0]}` : (BUTTONS[1 + ((asked - 3) % 2)] ?? BUTTONS[1]);
}

/** After "I think it's fine": look once more, in other words; then a way out. */
export function unsureQuestion(expects: Expects, asked: number): string {
  const options = expects.kind === 'state' ? [expects.ok[0] ?? 'okay', expects.problem[0] ?? 'not okay'] : [];
  const either = options.length === 2 ? `"${options[0]}" or "${options[1]}"` : hintFor(expects);
  const lines = [
    `Look once more, with a hand on it if that is safe: ${either}?`,
    `If it can't be told, say "skip it" and why. Else ${either}.`,
    `Not sure is no answer I can keep. ${BUTTONS[1]}`,
    BUTTONS[2],
  ];
  return asked < lines.length ? pick(lines, asked) : pick([lines[2] ?? '', BUTTONS[2]], asked % 2);
}

/** A meaning in a few words, for a question. */
export function speakMeaning(meaning: Meaning, expects: Expects): string {
  switch (meaning.intent) {
    case 'reading':
      return meaning.readings
        .map((reading) => {
          const where = reading.position === null ? '' : `${speakPosition(reading.position)} `;
          return `${where}${unmistakable(reading.value, expects, reading.unit, reading.unitSaid)}`;
        })
        .join(', ');
    case 'verdict': {
      if (expects.kind === 'choice') return expects.options.find(({ id }) => id === meaning.option)?.label ?? meaning.verdict;
      if (meaning.verdict === 'problem' && meaning.detail) return meaning.detail;
      if (expects.kind === 'state') return (meaning.verdict === 'ok' ? expects.ok[0] : expects.problem[0]) ?? meaning.verdict;
      return meaning.verdict;
    }
    case 'date':
      return meaning.value;
    default:
      return '';
  }
}

function unmistakable(value: number, expects: Expects, unit: Parameters<typeof spokenUnit>[0], unitSaid: boolean): string {
  if (unit === 'count') return speakNumber(value);
  if (teenTyTwin(value) !== null) return speakDigits(value);
  return speakReading(expects, { value, unit }, false, unitSaid ? 'full' : 'terse');
}

/** "Did you say sixty-two?" in turn with its like, so that nobody hears it three times over. */
export function confirmQuestion(meaning: Meaning, expects: Expects, asked: number, reason: 'heard' | 'unusual' | 'last'): string {
  const said = speakMeaning(meaning, expects);
  const lines =
    reason === 'last'
      ? [`Same as last time, ${said}. Did you read it just now?`, `Is it ${said} now?`]
      : reason === 'unusual'
        ? [`${capital(said)}? That is not what it was. Right?`, `Is ${said} right?`]
        : [`${capital(said)}, right?`, `Did you say ${said}?`];
  const line = lines[asked % lines.length] ?? '';
  return asked < 2 ? line : `${line} Say yes or no, or press it.`;
}

/** "One-five or five-zero?" */
export function distinguishQuestion(meanings: readonly Meaning[], expects: Expects, asked: number): string {
  const said = meanings.map((meaning) => {
    const [only] = meaning.intent === 'reading' ? meaning.readings : [];
    return only ? speakDigits(only.value) : speakMeaning(meaning, expects);
  });
  const line = `${capital(orList(said))}?`;
  return asked < 2 ? line : `${line} Say it digit by digit, or press it.`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
