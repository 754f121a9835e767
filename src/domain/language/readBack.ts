/** What is said back: short, and so that it cannot be taken for another value. Also: from a meaning to the answer kept. */
import type { Expects, Position } from '../checks/expects.ts';
import type { PlannedCheck } from '../plan/plan.ts';
import { toSI, UNITS, type UnitId } from '../quantity/units.ts';
import type { Answer } from '../round/entry.ts';
import type { Meaning, SpokenReading } from './meaning.ts';
import { speakPosition } from './positions.ts';
import { speakDigits, speakNumber, speakWhole, teenTyTwin } from './speakNumber.ts';

export interface ReadBackOptions {
  readonly style: 'full' | 'terse';
  /** The system people hear: a value said in the other one is read back with its unit. */
  readonly display: 'us' | 'metric';
}

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/**
 * An answer as it is said back: "sixty-two, left front", "none moved, right rear", "pinned".
 * The interpreter, given this text where the same check is asked, finds the same answer; tests hold it to that.
 * @returns no full stop, no capital
 */
export function readBack(
  check: Pick<PlannedCheck, 'lines' | 'position' | 'expects' | 'names'>,
  answer: Answer,
  options: ReadBackOptions,
): string {
  const spoken = speakAnswer(check.expects, answer, options);
  return check.position === null ? spoken : `${spoken}, ${speakPosition(check.position)}`;
}

function speakAnswer(expects: Expects, answer: Answer, { style }: ReadBackOptions): string {
  switch (answer.kind) {
    case 'reading':
      return speakReading(expects, answer.said, answer.hedged, style);
    case 'count':
      return speakCount(expects, answer.count, style);
    case 'state':
      return speakState(expects, answer);
    case 'choice':
      return speakChoice(expects, answer);
    case 'date':
      return answer.form === 'dot-week' ? speakDotWeek(answer.value) : speakMonth(answer.value);
  }
}

/**
 * A value in words with its unit where it is needed.
 * @param style `terse` leaves the check's own unit out; a teen or a round ten is then said by its digits
 */
export function speakReading(
  expects: Expects,
  said: { readonly value: number; readonly unit: UnitId },
  hedged: boolean,
  style: 'full' | 'terse',
): string {
  const forms = expects.kind === 'reading' ? expects.forms : [];
  const twin = teenTyTwin(said.value);
  const words = speakNumber(said.value, said.unit === (expects.kind === 'reading' ? expects.unit : null) ? forms : ['tenth']);
  const number = twin === null ? words : style === 'terse' ? speakDigits(said.value) : `${words}, ${speakDigits(said.value)}`;
  const isOwn = expects.kind === 'reading' && said.unit === expects.unit;
  const about = hedged ? 'about ' : '';
  if (isOwn && (style === 'terse' || twin !== null) && said.unit !== '32nds') return `${about}${number}`;
  if (isOwn && style === 'terse') return `${about}${number}`;
  return `${about}${number} ${spokenUnit(said.unit, said.value)}`.trim();
}

/** US spelling for the mouth and the ear. */
export function spokenUnit(unit: UnitId, value: number): string {
  const [singular, plural] = UNITS[unit].spoken;
  const name = value === 1 ? singular : plural;
  if (unit === 'F') return 'degrees';
  return name.replace('metre', 'meter').replace('litre', 'liter');
}

function speakCount(expects: Expects, count: number, style: 'full' | 'terse'): string {
  if (expects.kind !== 'count') return speakWhole(Math.max(0, Math.round(count)));
  if (count === 0) return expects.nonePhrases[0] ?? 'none';
  const [singular, plural] = expects.noun;
  return style === 'terse' ? speakWhole(count) : `${speakWhole(count)} ${count === 1 ? singular : plural}`;
}

function speakState(expects: Expects, answer: Extract<Answer, { kind: 'state' }>): string {
  if (answer.verdict === 'problem' && answer.detail) return plainDetail(answer.detail);
  if (expects.kind !== 'state') return answer.verdict === 'ok' ? 'okay' : 'not okay';
  return (answer.verdict === 'ok' ? expects.ok[0] : expects.problem[0]) ?? (answer.verdict === 'ok' ? 'okay' : 'not okay');
}

function speakChoice(expects: Expects, answer: Extract<Answer, { kind: 'choice' }>): string {
  if (expects.kind !== 'choice') return answer.option;
  const label = expects.options.find(({ id }) => id === answer.option)?.label ?? answer.option;
  const detail = answer.detail ? plainDetail(answer.detail) : '';
  return detail === '' || detail.includes(label) ? detail || label : `${label}, ${detail}`;
}

const LONGEST_DETAIL = 80;

/** A finding in the speaker's words, cut at a word where it is long. */
function plainDetail(detail: string): string {
  const text = detail.trim().replace(/[.!?]+$/, '');
  if (text.length <= LONGEST_DETAIL) return text;
  return text.slice(0, LONGEST_DETAIL).replace(/\s+\S*$/, '');
}

function speakDotWeek(code: string): string {
  if (!/^\d{4}$/.test(code)) return code;
  const year = Number(code.slice(2));
  return `week ${speakWhole(Number(code.slice(0, 2)))}, ${speakYear(2000 + year)}`;
}

function speakMonth(value: string): string {
  const [year, month] = value.split('-').map(Number);
  const name = MONTHS[(month ?? 0) - 1];
  return name === undefined || year === undefined ? value : `${name} ${speakYear(year)}`;
}

function speakYear(year: number): string {
  if (year === 2000) return 'two thousand';
  const rest = year % 100;
  const century = speakWhole(Math.floor(year / 100));
  return rest < 10 ? `${century} oh ${speakWhole(rest)}` : `${century} ${speakWhole(rest)}`;
}

export interface PlacedAnswer {
  /** Null: the check itself. */
  readonly position: Position | null;
  readonly answer: Answer;
}

/**
 * The answers that a meaning gives to a check, values in SI with what was said beside them.
 * @returns none for a meaning that answers nothing: a command, a yes or no, an unsure or unclear one
 */
export function toAnswers(meaning: Meaning, check: Pick<PlannedCheck, 'expects' | 'position'>): readonly PlacedAnswer[] {
  const { expects } = check;
  switch (meaning.intent) {
    case 'reading':
      return meaning.readings.flatMap((reading) => {
        const answer = readingAnswer(reading, meaning.hedged, expects);
        return answer ? [{ position: reading.position, answer }] : [];
      });
    case 'verdict': {
      if (meaning.verdict === 'unsure') return [];
      const answer: Answer | null =
        expects.kind === 'choice'
          ? meaning.option === null
            ? null
            : { kind: 'choice', option: meaning.option, detail: meaning.detail }
          : { kind: 'state', verdict: meaning.verdict, detail: meaning.detail };
      if (!answer) return [];
      return meaning.positions.length === 0
        ? [{ position: null, answer }]
        : meaning.positions.map((position) => ({ position, answer }));
    }
    case 'date':
      return expects.kind === 'date'
        ? [{ position: null, answer: { kind: 'date', form: expects.form, value: meaning.value } }]
        : [];
    case 'command':
    case 'confirmation':
    case 'unclear':
      return [];
  }
}

function readingAnswer(reading: SpokenReading, hedged: boolean, expects: Expects): Answer | null {
  if (expects.kind === 'count') return Number.isInteger(reading.value) ? { kind: 'count', count: reading.value } : null;
  if (reading.unit === 'count' || !Number.isFinite(reading.value)) return null;
  return { kind: 'reading', si: toSI(reading.value, reading.unit), said: { value: reading.value, unit: reading.unit }, hedged };
}
