import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planRound } from '../../../src/domain/plan/planRound.ts';
import type { Entry, EntryDraft, Round } from '../../../src/domain/round/entry.ts';
import { NO_HEARING } from '../../../src/domain/round/how.ts';
import { nextStep } from '../../../src/domain/round/next.ts';
import { replay } from '../../../src/domain/round/replay.ts';
import { DEMO_UNITS } from '../../../src/domain/unit/demo.ts';

const unit = DEMO_UNITS[0];
if (!unit) throw new Error('there are demo units');
const round: Round = { schema: 1, id: 'r', unit: unit.id, startedAt: 0, plan: planRound(unit, 'before-towing', 0), demo: true };
const MINUTE = 60_000;

const stamp = (drafts: readonly (EntryDraft & { at?: number })[]): Entry[] =>
  drafts.map(({ at = 0, ...draft }, seq) => ({ ...draft, id: `e${seq}`, round: 'r', seq, at }) as Entry);
const answered = (key: string, at = 0): EntryDraft & { at: number } => ({
  kind: 'answered',
  key,
  answer: { kind: 'state', verdict: 'ok', detail: null },
  outcome: 'ok',
  how: { ...NO_HEARING, via: 'button', by: 'first' },
  supersedes: null,
  at,
});
const skipped = (key: string): EntryDraft => ({
  kind: 'skipped',
  key,
  reason: 'later',
  how: { ...NO_HEARING, via: 'button', by: 'first' },
  supersedes: null,
});

/** Answers whatever comes next, waiting where that is asked for, one minute a check. */
function walk(skip: (key: string) => boolean = () => false): { keys: string[]; waited: boolean } {
  const drafts: (EntryDraft & { at?: number })[] = [{ kind: 'begun', people: 1 }];
  const keys: string[] = [];
  let now = 0;
  let waited = false;
  for (let turn = 0; turn < 500; turn += 1) {
    const step = nextStep(replay(round, stamp(drafts)), now);
    if (step.kind === 'wrap-up') return { keys, waited };
    if (step.kind === 'wait') {
      waited = true;
      now = step.dueAt;
      continue;
    }
    keys.push(step.key);
    drafts.push(skip(step.key) ? skipped(step.key) : answered(step.key, now));
    now += MINUTE / 4;
  }
  throw new Error('the walk never ends');
}

describe('what comes next', () => {
  const timed = round.plan.checks.find((check) => check.timed !== null);

  it('asks every check once', () => {
    const { keys } = walk();
    expect([...keys].sort()).toEqual(round.plan.checks.map((check) => check.key).sort());
  });

  it('never asks what must come after the heater test before it', () => {
    const { keys } = walk();
    const place = new Map(keys.map((key, index) => [key, index]));
    for (const check of round.plan.checks) {
      for (const before of check.after ?? [])
        expect(place.get(before), `${before} before ${check.key}`).toBeLessThan(place.get(check.key) ?? -1);
    }
  });

  it('waits for a reading that is not due only when nothing else can be done', () => {
    const keys = round.plan.checks.map((check) => check.key).filter((key) => key !== timed?.key);
    const blocked = round.plan.checks.filter((check) => check.after?.includes(timed?.key ?? '')).map((check) => check.key);
    const rest = keys.filter((key) => !blocked.includes(key));
    const state = replay(round, stamp([{ kind: 'begun', people: 1 }, ...rest.map((key) => answered(key, MINUTE))]));
    expect(nextStep(state, 2 * MINUTE)).toEqual({ kind: 'wait', key: timed?.key, dueAt: 11 * MINUTE });
    expect(nextStep(state, 11 * MINUTE)).toEqual({ kind: 'check', key: timed?.key });
  });

  it('asks a due reading when the station at hand is finished, not between two checks of it', () => {
    const start = round.plan.checks.find(
      (check) => check.check === timed?.timed?.startedBy || check.key === timed?.timed?.startedBy,
    );
    const tongue = round.plan.stations.find((place) => place.kind === 'tongue')?.checks ?? [];
    const before = round.plan.checks
      .slice(
        0,
        round.plan.checks.findIndex((check) => check.key === tongue[0]),
      )
      .map((check) => check.key);
    expect(before).toContain(start?.key);
    const middle = replay(
      round,
      stamp([{ kind: 'begun', people: 1 }, ...before.map((key) => answered(key)), answered(tongue[0] ?? '')]),
    );
    expect(nextStep(middle, 60 * MINUTE)).toEqual({ kind: 'check', key: tongue[1] });
    const end = replay(
      round,
      stamp([{ kind: 'begun', people: 1 }, ...before.map((key) => answered(key)), ...tongue.map((key) => answered(key))]),
    );
    expect(nextStep(end, 60 * MINUTE)).toEqual({ kind: 'check', key: timed?.key });
  });

  it('ends whatever is skipped, the start of the timer too', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const { keys } = walk((key) => (key.length * 7 + seed) % 3 === 0);
        expect(new Set(keys).size).toBe(round.plan.checks.length);
      }),
      { numRuns: 30 },
    );
  });
});
