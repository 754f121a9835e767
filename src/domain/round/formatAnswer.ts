/** An answer as it is read on the screen: "62 psi", "pinned", "2 of 6 moved", "week 22 of 2020". */
import type { PlannedCheck } from '../plan/plan.ts';
import { formatQuantity } from '../quantity/format.ts';
import type { Answer } from './entry.ts';
import type { Display } from './judging.ts';

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

export function formatAnswer(check: Pick<PlannedCheck, 'expects'>, answer: Answer, display: Display): string {
  const { expects } = check;
  switch (answer.kind) {
    case 'reading':
      return `${answer.hedged ? 'about ' : ''}${formatQuantity(answer.si, expects.kind === 'reading' ? expects.unit : answer.said.unit, display)}`;
    case 'count': {
      if (expects.kind !== 'count') return String(answer.count);
      return `${answer.count} ${expects.noun[answer.count === 1 ? 0 : 1]}`;
    }
    case 'state': {
      const label = expects.kind === 'state' ? (answer.verdict === 'ok' ? expects.ok[0] : expects.problem[0]) : undefined;
      return withDetail(label ?? answer.verdict, answer.detail);
    }
    case 'choice': {
      const option = expects.kind === 'choice' ? expects.options.find((candidate) => candidate.id === answer.option) : undefined;
      return withDetail(option?.label ?? answer.option, answer.detail);
    }
    case 'date':
      return answer.form === 'dot-week' ? formatDotWeek(answer.value) : formatMonth(answer.value);
  }
}

function withDetail(label: string, detail: string | null): string {
  return detail === null || detail === '' || detail === label ? label : `${label}: ${detail}`;
}

function formatDotWeek(code: string): string {
  return /^\d{4}$/.test(code) ? `week ${Number(code.slice(0, 2))} of 20${code.slice(2)}` : code;
}

function formatMonth(value: string): string {
  const [year, month] = value.split('-');
  const name = MONTHS[Number(month) - 1];
  return name === undefined ? value : `${name} ${year}`;
}
