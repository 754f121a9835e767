/** Which words of a transcript counted toward the answer, for whoever doubts it afterwards. */
import { interpret } from '../language/interpret.ts';
import type { NamedCheck, TokenUse } from '../language/meaning.ts';
import type { Plan, PlannedCheck } from '../plan/plan.ts';

export interface HeardWord {
  readonly text: string;
  readonly counted: boolean;
}

const UNCOUNTED: ReadonlySet<TokenUse['use']> = new Set(['filler', 'ignored']);

const named = ({ key, names, position, expects }: PlannedCheck): NamedCheck => ({ key, names, position, expects });

/**
 * The transcript's words in order. The interpreter has no memory, so they are read again as they were read then.
 * @param key of the check that was answered
 */
export function heardWords(plan: Plan, key: string, transcript: string): readonly HeardWord[] {
  const check = plan.checks.find((one) => one.key === key);
  if (!check) return [{ text: transcript, counted: true }];
  const siblings = plan.checks.filter((one) => one.check === check.check);
  const { tokens } = interpret(transcript, {
    expects: check.expects,
    names: check.names,
    position: check.position,
    positions: siblings.flatMap(({ position }) => (position === null ? [] : [position])),
    others: plan.checks.filter((one) => one.check !== check.check && one.station === check.station).map(named),
    last: null,
    previous: null,
    mode: 'answer',
  });
  return tokens.map(({ text, use }) => ({ text, counted: !UNCOUNTED.has(use) }));
}
