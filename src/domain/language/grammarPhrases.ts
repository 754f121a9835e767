/** Phrases that bias a browser's recogniser towards the answers of the check that is asked. */
import type { Expects, Position } from '../checks/expects.ts';
import { UNITS } from '../quantity/units.ts';
import type { ListenRequest } from '../voice/ports.ts';
import { speakPosition } from './positions.ts';
import { spokenUnit } from './readBack.ts';
import { speakNumber, speakWhole } from './speakNumber.ts';

/** Browsers take a bounded list, and a long one weakens every phrase in it. */
const MOST_PHRASES = 60;
const COMMANDS = [
  'say again',
  'go back',
  'skip it',
  'hold on',
  'carry on',
  'undo that',
  'make a note',
  'where was I',
  'why',
  'help',
  'stop',
];

/**
 * A few dozen phrases for one request, the most telling first.
 * @returns none twice; empty for a note, where every word is welcome
 */
export function phrasesFor(request: ListenRequest): string[] {
  if (request.mode === 'free') return [];
  const phrases = [
    ...(request.mode === 'confirm' ? ['yes', 'no', "that's right", 'no, it is'] : []),
    ...answerPhrases(request.expects),
    ...placedPhrases(request.positions),
    ...request.others.slice(0, 8).flatMap(({ names }) => names.slice(0, 1)),
    ...COMMANDS,
  ];
  return [...new Set(phrases)].slice(0, MOST_PHRASES);
}

const placedPhrases = (positions: readonly Position[]): readonly string[] =>
  positions.length > 1 ? positions.map(speakPosition) : [];

function answerPhrases(expects: Expects): readonly string[] {
  switch (expects.kind) {
    case 'reading': {
      const { usual, unit, forms } = expects;
      const names = UNITS[unit].spoken[1] === '' ? [] : [spokenUnit(unit, 2)];
      const count = 14;
      const stride = Math.max(expects.step, Math.ceil((usual.max - usual.min) / count));
      const values = Array.from({ length: count }, (_, index) => usual.min + index * stride).filter(
        (value) => value <= usual.max,
      );
      const whole = values.map((value) => speakNumber(Math.round(value * 100) / 100, forms));
      return [
        ...names,
        ...whole,
        ...(forms.includes('half') ? ['and a half'] : []),
        ...(forms.includes('negative') ? ['below zero', 'minus'] : []),
        ...(forms.includes('thirty-second') ? ['thirty-seconds'] : []),
        ...(forms.includes('spoken-decimal') ? ['point'] : []),
      ];
    }
    case 'count': {
      const highest = Math.min(expects.max, 10);
      const counts = Array.from({ length: highest }, (_, index) => speakWhole(index + 1));
      return [
        ...expects.nonePhrases,
        ...expects.allPhrases,
        ...counts,
        ...counts.slice(0, 3).map((word) => `${word} ${expects.noun[1]}`),
      ];
    }
    case 'state':
      return [...expects.ok.slice(0, 12), ...expects.problem.slice(0, 14)];
    case 'choice':
      return expects.options.flatMap(({ label, phrases }) => [label, ...phrases.slice(0, 5)]);
    case 'date':
      return expects.form === 'dot-week'
        ? ['week', 'twenty-two twenty', 'thirty-six twenty-three', 'oh five twenty-one']
        : [
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
            'twenty twenty-four',
            'twenty thirty',
          ];
  }
}
