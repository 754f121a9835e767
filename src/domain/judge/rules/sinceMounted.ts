/** How far a wheel has gone since it was mounted, against the marks at which its lugs are pulled again. */
import { formatQuantity, speakQuantity } from '../../quantity/format.ts';
import { crosses, judgement, numberParam, type Rule, unjudged } from './rule.ts';

export const judgeSinceMounted: Rule = (check, answer, { display }) => {
  if (answer.kind !== 'reading' || !Number.isFinite(answer.si) || answer.si < 0) return unjudged('That is no distance.');
  const gone = answer.si;
  const pulled = numberParam(check, 'pulledM') ?? 0;
  const passed = check.judge.limits.filter((mark) => !crosses(gone, mark));
  const missed = passed.filter((mark) => crosses(pulled, mark));
  const due = missed.at(-1);
  const next = check.judge.limits.find((mark) => crosses(gone, mark));
  const facts = next ? [{ label: 'next pull after mounting', text: formatQuantity(next.si, 'mi', display) }] : [];
  if (due) {
    return judgement('ok', `Its lugs are due: the pull at ${speakQuantity(due.si, 'mi', display)} after mounting.`, {
      todo: next
        ? `Pull them now, and again at ${speakQuantity(next.si, 'mi', display)}.`
        : 'Pull them now. If none moves, the wheel is settled.',
      limit: due,
      facts,
    });
  }
  if (!next) return judgement('ok', 'This wheel is settled.', { limit: check.judge.limits.at(-1) ?? null, facts });
  return judgement('ok', `The next pull is due at ${speakQuantity(next.si, 'mi', display)} after mounting.`, {
    todo: 'Until then the usual pull before towing is enough.',
    limit: next,
    facts,
  });
};
