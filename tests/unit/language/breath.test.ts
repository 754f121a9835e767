import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { interpret } from '../../../src/domain/language/interpret.ts';
import type { InterpretContext, Meaning, NamedCheck } from '../../../src/domain/language/meaning.ts';
import { planRound } from '../../../src/domain/plan/planRound.ts';
import { DEMO_UNITS } from '../../../src/domain/unit/demo.ts';

const plan = planRound(DEMO_UNITS[2]!, 'before-towing', Date.UTC(2026, 10, 25, 12));
const planned = (key: string) => plan.checks.find((check) => check.key === key)!;
const named = (key: string): NamedCheck => {
  const { names, position, expects } = planned(key);
  return { key, names, position, expects };
};
const at = (key: string, others: readonly string[] = []): InterpretContext => {
  const { expects, names, position, check } = planned(key);
  const positions = plan.checks.flatMap((one) => (one.check === check && one.position !== null ? [one.position] : []));
  return { expects, names, position, positions, others: others.map(named), last: null, previous: null, mode: 'answer' };
};
/** What each place was said to be; the check asked is at its own place. */
const byPlace = (meaning: Meaning, asked: string | null) =>
  Object.fromEntries(
    [meaning, ...(meaning.also ?? [])].flatMap((one) =>
      one.intent === 'verdict'
        ? (one.positions.length > 0 ? one.positions : [asked]).map((position) => [position, one.verdict] as const)
        : [],
    ),
  );

describe('two sides in one breath', () => {
  const pins = at('transport-pins@left');

  it.each([
    ['left pinned, right not', { left: 'ok', right: 'problem' }],
    ['left pinned right not pinned', { left: 'ok', right: 'problem' }],
    ['pinned on the left, not on the right', { left: 'ok', right: 'problem' }],
    ['not pinned left pinned right', { left: 'problem', right: 'ok' }],
    ['left is pinned but the right has no keeper', { left: 'ok', right: 'problem' }],
    ['right no pin, left pinned', { left: 'ok', right: 'problem' }],
    ['left and right pinned', { left: 'ok', right: 'ok' }],
    ['pinned left and right', { left: 'ok', right: 'ok' }],
    ['left pinned and right pinned', { left: 'ok', right: 'ok' }],
  ])('"%s"', (text, expected) => {
    expect(byPlace(interpret(text, pins), 'left')).toEqual(expected);
  });

  it('never takes a mixed breath for one statement about both sides', () => {
    const { expects } = planned('transport-pins@left');
    if (expects.kind !== 'state') throw new Error('the pins are a state');
    const phrase = (all: readonly string[]) => fc.constantFrom(...all);
    const side = fc.constantFrom('left', 'right');
    fc.assert(
      fc.property(
        side,
        phrase(expects.ok),
        phrase(expects.problem),
        fc.boolean(),
        fc.constantFrom(', ', ' ', ' and ', ' but '),
        (first, good, bad, goodFirst, link) => {
          const second = first === 'left' ? 'right' : 'left';
          const [one, other] = goodFirst ? [good, bad] : [bad, good];
          const text = `${first} ${one}${link}${second} ${other}`;
          const meaning = interpret(text, pins);
          if (meaning.intent === 'unclear' || (meaning.intent === 'verdict' && meaning.verdict === 'unsure')) return;
          // "right in" may be no place at all; what is kept of a place is what was said of it.
          const said: Record<string, string> = { [first]: goodFirst ? 'ok' : 'problem', [second]: goodFirst ? 'problem' : 'ok' };
          for (const [place, verdict] of Object.entries(byPlace(meaning, 'left')))
            expect([text, place, verdict]).toEqual([text, place, said[place]]);
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('asks where a part of it is not clear', () => {
    expect(interpret('left pinned, right not really sure', pins)).not.toMatchObject({ intent: 'verdict', verdict: 'ok' });
    expect(interpret('not on the left, not on the right', pins)).toMatchObject({ intent: 'unclear' });
  });
});

describe('two checks in one breath', () => {
  const chains = at('chains', ['breakaway-cable', 'connector', 'jack']);

  it.each([
    ['crossed and hooked, breakaway cable hooked on', [null, 'breakaway-cable']],
    ['crossed and hooked, jack up and pinned', [null, 'jack']],
    ['breakaway cable hooked on, jack is up and pinned', ['breakaway-cable', 'jack']],
  ])('"%s"', (text, targets) => {
    const meaning = interpret(text, chains);
    expect([meaning, ...(meaning.also ?? [])].map(({ about }) => about)).toEqual(targets);
    for (const one of [meaning, ...(meaning.also ?? [])]) expect(one).toMatchObject({ intent: 'verdict', verdict: 'ok' });
  });

  it('keeps a defect with the check that it was said of', () => {
    const meaning = interpret('crossed and hooked, jack not pinned', chains);
    expect(meaning).toMatchObject({ verdict: 'ok', about: null, also: [{ verdict: 'problem', about: 'jack' }] });
  });
});
