import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OUTCOMES, type Outcome } from '../../../src/domain/checks/outcome.ts';
import type { Judgement } from '../../../src/domain/judge/judgement.ts';
import { limitsSpec, stateSpec, tirePressureSpec } from '../../../src/domain/judge/specs.ts';
import { roundVerdict, spokenSource, type VerdictLine } from '../../../src/domain/judge/verdict.ts';
import type { PlannedCheck } from '../../../src/domain/plan/plan.ts';
import { givenUnit } from '../history/givenRounds.ts';
import { expectsReading, givenCheck, judgeReading } from './given.ts';

const JUDGED = (outcome: Outcome, more: Partial<Judgement> = {}): Judgement => ({
  outcome,
  say: outcome === 'ok' ? '' : 'It is so.',
  todo: outcome === 'ok' ? null : 'Do this.',
  limit: null,
  question: null,
  facts: [],
  ...more,
});
const check = (worst: Outcome, name: string): PlannedCheck => givenCheck(limitsSpec(worst, []), expectsReading('psi'), name);
const answered = (worst: Outcome, outcome: Outcome, name = 'a check', more: Partial<Judgement> = {}): VerdictLine => ({
  check: check(worst, name),
  judgement: JUDGED(outcome, more),
  status: 'answered',
});
const unseen = (worst: Outcome, status: 'skipped' | 'open' = 'open', name = 'unseen'): VerdictLine => ({
  check: check(worst, name),
  judgement: null,
  status,
});
const verdict = (...lines: VerdictLine[]) => roundVerdict({ lines, display: 'us' });

describe('the worst wins', () => {
  it.each<[string, VerdictLine[], string]>([
    ['all good', [answered('hold', 'ok'), answered('fix', 'ok')], 'ok'],
    ['one watch', [answered('hold', 'ok'), answered('fix', 'watch')], 'watch'],
    ['one fix', [answered('hold', 'watch'), answered('fix', 'fix')], 'fix'],
    ['one hold', [answered('hold', 'hold'), answered('fix', 'fix')], 'hold'],
    ['an open check that could be a hold', [answered('hold', 'ok'), unseen('hold')], 'not-cleared'],
    ['a skipped check that could be a hold', [answered('hold', 'fix'), unseen('hold', 'skipped')], 'not-cleared'],
    ['a hold that was found beside an open one', [answered('hold', 'hold'), unseen('hold')], 'hold'],
    ['a lesser check passed over', [answered('hold', 'ok'), unseen('fix', 'skipped')], 'watch'],
    ['an answer that waits for a question', [answered('hold', 'watch', 'x', { question: 'Cold?' })], 'not-cleared'],
    ['an answer that could not be taken', [answered('hold', 'watch', 'x', { settled: false })], 'not-cleared'],
    ['a lesser answer that waits', [answered('fix', 'watch', 'x', { question: 'Which?' })], 'watch'],
    ['nothing at all', [], 'not-cleared'],
  ])('%s', (_name, lines, outcome) => {
    expect(verdict(...lines).outcome).toBe(outcome);
  });

  const anyLine = fc
    .record({
      worst: fc.constantFrom(...OUTCOMES),
      outcome: fc.constantFrom(...OUTCOMES),
      status: fc.constantFrom('answered' as const, 'open' as const, 'skipped' as const),
    })
    .map(({ worst, outcome, status }) => (status === 'answered' ? answered(worst, outcome) : unseen(worst, status)));

  it('is ok only where everything was answered and good, and never depends on the order', () => {
    fc.assert(
      fc.property(fc.array(anyLine, { minLength: 1, maxLength: 30 }), (lines) => {
        const { outcome, sentences } = verdict(...lines);
        const allGood = lines.every((line) => line.status === 'answered' && line.judgement?.outcome === 'ok');
        expect(outcome === 'ok').toBe(allGood);
        expect(verdict(...[...lines].reverse()).outcome).toBe(outcome);
        expect(sentences.length).toBeGreaterThan(0);
      }),
    );
  });

  it('one more bad finding never makes it better', () => {
    const rank = { ok: 0, watch: 1, fix: 2, 'not-cleared': 3, hold: 4 } as const;
    fc.assert(
      fc.property(fc.array(anyLine, { minLength: 1, maxLength: 20 }), anyLine, (lines, extra) => {
        expect(rank[verdict(...lines, extra).outcome]).toBeGreaterThanOrEqual(rank[verdict(...lines).outcome]);
      }),
    );
  });
});

describe('what is said', () => {
  it('a hold names the thing, the number, the figure behind it and what to do', () => {
    const spec = tirePressureSpec(givenUnit());
    const line: VerdictLine = {
      check: givenCheck(spec, expectsReading('psi'), 'tire pressure', 'left'),
      judgement: judgeReading(spec, 45, 'psi'),
      status: 'answered',
    };
    const { sentences, todos } = verdict(line);
    expect(sentences[0]).toBe('Hold. Do not tow until one thing is mended.');
    expect(sentences[1]).toBe(
      "Tire pressure, left: 45 is 20 pounds under the placard's 65 pounds, by federal rule 571.138. Do not tow on it. Add air before you tow, cold.",
    );
    expect(todos[0]?.source?.text).toContain('571.138');
  });

  it('a state says what was seen, with the source of its check', () => {
    const state = givenCheck(stateSpec('hold'), { kind: 'state', ok: ['in'], problem: ['out'], yesMeans: 'ok' }, 'pin');
    const line: VerdictLine = {
      check: { ...state, sources: [{ kind: 'published', text: '49 CFR 393.70 (guidance here)' }] },
      judgement: JUDGED('hold', { seen: 'bent', say: 'Do not tow.', todo: 'Mend it.' }),
      status: 'answered',
    };
    expect(verdict(line).sentences[1]).toBe('Pin: bent, by federal rule 393.70. Mend it.');
    expect(verdict(line).todos[0]?.text).toBe('Bent. Mend it.');
  });

  it('names what is open, what was passed over and what figures are missing', () => {
    const { sentences } = verdict(
      answered('hold', 'watch', 'pressure', { missing: ['the placard pressure'] }),
      unseen('hold', 'open', 'coupler'),
      unseen('fix', 'skipped', 'awning'),
    );
    const all = sentences.join(' ');
    expect(all).toContain('Not cleared to tow. Not settled: coupler.');
    expect(all).toContain('Not looked at: awning.');
    expect(all).toContain('Not known: the placard pressure.');
  });

  it('sources can be spoken', () => {
    expect(spokenSource({ kind: 'published', text: '49 CFR 571.138 S4.2(a) (cars)' })).toBe('federal rule 571.138');
    expect(spokenSource({ kind: 'maker', text: "unit's tire placard" })).toBe("the unit's tire placard");
    expect(spokenSource({ kind: 'common-practice', text: 'common practice, no source' })).toBe('common practice');
    expect(spokenSource({ kind: 'published', text: 'NIOSH limit: 35 ppm over a working day' })).toBe('NIOSH limit');
  });
});
