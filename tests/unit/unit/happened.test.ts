import { describe, expect, it } from 'vitest';
import { settledLugChecks } from '../../../src/domain/history/lugChecks.ts';
import { judge } from '../../../src/domain/judge/judge.ts';
import { dueSentences, wheelsDue } from '../../../src/domain/lugs/retorque.ts';
import { planRound } from '../../../src/domain/plan/planRound.ts';
import { toSI } from '../../../src/domain/quantity/units.ts';
import { considerPress } from '../../../src/domain/round/consider.ts';
import type { UnitEvent } from '../../../src/domain/round/entry.ts';
import { replay } from '../../../src/domain/round/replay.ts';
import { DEMO_UNITS } from '../../../src/domain/unit/demo.ts';
import { type HappenedForm, readHappening } from '../../../src/domain/unit/happened.ts';
import { givenRound, givenUnit } from '../history/givenRounds.ts';

const AT = Date.UTC(2026, 10, 25, 12);
const DAY = 86_400_000;
const CONTEXT = {
  at: AT,
  outsideK: null,
  elevationM: null,
  hoursParked: null,
  answers: new Map(),
  display: 'us',
} as const;
const unit = { ...DEMO_UNITS[2]!, wheels: { ...DEMO_UNITS[2]!.wheels, dotCodes: { left: '1423', right: '1423' } } };
const typed = (form: Partial<HappenedForm>): HappenedForm => ({
  kind: '',
  position: '',
  odometer: '',
  dotCode: '',
  text: '',
  ...form,
});

describe('what happened between rounds', () => {
  it('keeps a wheel that was off, with the odometer in the system it was typed in', () => {
    const read = readHappening(typed({ kind: 'wheel-mounted', position: 'left', odometer: '61,204' }), unit, AT, 'us');
    expect(read).toEqual({
      ok: true,
      event: { kind: 'wheel-mounted', position: 'left', odometerM: toSI(61_204, 'mi') },
      unit: null,
    });
    const metric = readHappening(typed({ kind: 'wheel-mounted', position: 'left', odometer: '98 500' }), unit, AT, 'metric');
    expect(metric.ok && metric.event.kind === 'wheel-mounted' && metric.event.odometerM).toBe(98_500_000);
  });

  it('takes the date code of the old tire out of the profile, and puts the new one in', () => {
    const read = readHappening(typed({ kind: 'tire-changed', position: 'left', dotCode: '3025' }), unit, AT, 'us');
    expect(read.ok && read.unit?.wheels.dotCodes).toEqual({ left: '3025', right: '1423' });
    expect(read.ok && read.unit?.revision).toBe(unit.revision + 1);
    const unknown = readHappening(typed({ kind: 'tire-changed', position: 'left' }), unit, AT, 'us');
    expect(unknown.ok && unknown.unit?.wheels.dotCodes).toEqual({ right: '1423' });
  });

  it.each([
    [{ kind: 'tire-changed', position: 'left', dotCode: '5426' }, 'dotCode', /week/],
    [{ kind: 'tire-changed', position: 'left-front' }, 'position', /Choose the wheel/],
    [{ kind: 'wheel-mounted', position: 'left', odometer: 'about ten' }, 'odometer', /number/],
    [{ kind: 'wheel-mounted', position: 'left', odometer: '-5' }, 'odometer', /number/],
    [{ kind: 'noted', text: '  ' }, 'text', /few words/],
    [{ kind: 'mended' }, 'kind', /Choose/],
  ])('says what is wrong with %j', (form, field, sentence) => {
    const read = readHappening(typed(form), unit, AT, 'us');
    expect(read).toMatchObject({ ok: false, field, sentence: expect.stringMatching(sentence) });
  });
});

describe('lugs after a wheel was off', () => {
  const off = (position: 'left' | 'right', days: number): UnitEvent => ({
    id: `off-${position}`,
    unit: unit.id,
    at: AT - days * DAY,
    kind: 'wheel-mounted',
    position,
    odometerM: null,
  });
  const due = (events: readonly UnitEvent[], rounds: Parameters<typeof settledLugChecks>[0] = []) =>
    wheelsDue(['left', 'right'], events, settledLugChecks(rounds), AT);
  const pulled = (days: number, moved: number) =>
    givenRound({
      id: `round-${days}`,
      unit: givenUnit({ id: unit.id }),
      at: AT - days * DAY,
      checks: [{ check: 'lugs-moved', position: 'left', rule: 'lugs-moved', count: true }],
      answers: [{ key: 'lugs-moved@left', value: moved }],
    });

  it('are due until three rounds found none that moved', () => {
    expect(due([]).length).toBe(0);
    expect(due([off('left', 9)]).map(({ position }) => position)).toEqual(['left']);
    const three = [pulled(8, 0), pulled(7, 0), pulled(6, 0)];
    expect(due([off('left', 9)], three.slice(0, 2)).length).toBe(1);
    expect(due([off('left', 9)], three).length).toBe(1);
    expect(due([off('left', 9)], [...three, pulled(5, 0)]).length).toBe(0);
    expect(due([off('left', 9)], [pulled(8, 0), pulled(7, 2), pulled(6, 0), pulled(5, 0)]).length).toBe(1);
  });

  it('are asked for on the road, judged as a wheel that settles, and told of at the start', () => {
    const wheels = due([off('left', 2)]);
    const plan = planRound(unit, 'stop-on-the-road', AT, {
      mounted: wheels,
      due: dueSentences(wheels),
    });
    const lugs = plan.checks.filter(({ check }) => check === 'lugs-moved');
    expect(lugs.map(({ key }) => key)).toEqual(['lugs-moved@left']);
    expect(lugs[0]?.judge.params.mounted).toBe(true);
    expect(plan.due).toEqual([
      'The left wheel was mounted and I do not know how far it went since. Pull its lugs at every stop until fifty miles.',
    ]);
    expect(planRound(unit, 'stop-on-the-road', AT).checks.some(({ check }) => check === 'lugs-moved')).toBe(false);
  });

  it('are asked for by distance, which carries over into the next rounds', () => {
    const MILES = 1609.344;
    const towed = (days: number, miles: number) =>
      givenRound({
        id: `round-${days}`,
        unit: givenUnit({ id: unit.id }),
        at: AT - days * DAY,
        checks: [
          { check: 'since-mounted', position: 'left', rule: 'since-mounted', unit: 'mi' },
          { check: 'lugs-moved', position: 'left', rule: 'lugs-moved', count: true },
        ],
        answers: [
          { key: 'since-mounted@left', value: miles },
          { key: 'lugs-moved@left', value: 0 },
        ],
      });
    const [wheel] = due([off('left', 9)], [towed(8, 12)]);
    expect(wheel?.pulledM).toBeCloseTo(12 * MILES, 6);
    expect(wheel?.retorque).toMatchObject({
      sentence: 'The left lugs held at twelve miles after that wheel was mounted. They are due again at twenty-five.',
    });
    const plan = planRound(unit, 'stop-on-the-road', AT, { mounted: wheel ? [wheel] : [] });
    const asked = plan.checks.find(({ check }) => check === 'since-mounted');
    expect(asked?.lines.ask).toBe('How many miles since the left wheel went on?');
    const order = plan.checks.map(({ check }) => check);
    expect(order.indexOf('since-mounted')).toBeLessThan(order.indexOf('lugs-moved'));
    const says = (miles: number) => {
      if (!asked) return '';
      const answer = { kind: 'reading', si: miles * MILES, said: { value: miles, unit: 'mi' }, hedged: false } as const;
      const { outcome, say, todo } = judge(asked, answer, CONTEXT);
      expect(outcome).toBe('ok');
      return `${say} ${todo ?? ''}`;
    };
    expect(says(20)).toMatch(/^The next pull is due at 25 miles/);
    expect(says(26)).toMatch(/^Its lugs are due: the pull at 25 miles .*again at 50 miles/);
    expect(says(51)).toMatch(/^Its lugs are due: the pull at 50 miles .*settled/);
    // Fifty miles with none that moved: the wheel is done with after one look.
    expect(due([off('left', 9)], [towed(8, 51)])).toEqual([]);
  });

  it('are told of aloud, though a distance is never wrong', () => {
    const plan = planRound(unit, 'stop-on-the-road', AT, { mounted: [{ position: 'left', odometerM: null, pulledM: 0 }] });
    const state = replay({ schema: 1, id: 'r', unit: unit.id, startedAt: AT, plan, demo: true }, []);
    const current = state.byKey.get('since-mounted@left');
    if (!current) throw new Error('the distance is asked');
    const said = (miles: number) => {
      const answer = { kind: 'reading', si: miles * 1609.344, said: { value: miles, unit: 'mi' }, hedged: false } as const;
      const matter = { state, past: new Map(), style: 'full', display: 'us', now: AT } as const;
      const step = considerPress(matter, current, answer, 'button');
      return step.kind === 'keep' ? step.readBack.join(' ') : '';
    };
    expect(said(26)).toMatch(/Its lugs are due: the pull at 25 miles after mounting\. Pull them now, and again at 50 miles\./);
    expect(said(4)).toMatch(/The next pull is due at 10 miles after mounting\. Until then/);
  });

  it('name the odometer reading that was written down', () => {
    const plan = planRound(unit, 'stop-on-the-road', AT, {
      mounted: [{ position: 'left', odometerM: 61_204 * 1609.344, pulledM: 0 }],
    });
    expect(plan.checks.find(({ check }) => check === 'since-mounted')?.lines.ask).toBe(
      'How many miles since the left wheel went on? The odometer showed sixty-one thousand two hundred four miles then.',
    );
  });

  it('are told of in one sentence for several wheels', () => {
    expect(dueSentences(due([off('left', 2), off('right', 2)]))).toEqual([
      'These wheels were off: left and right. Pull their lugs at every stop until fifty miles.',
    ]);
  });
});
