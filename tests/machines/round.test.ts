import { describe, expect, it } from 'vitest';
import { replay } from '../../src/domain/round/replay.ts';
import { createUnit } from '../../src/domain/unit/createUnit.ts';
import { TEMPLATES } from '../../src/domain/unit/templates.ts';
import { roundWorld, START } from './support/round.ts';

const unitOf = (index: number) => {
  const template = TEMPLATES[index];
  if (!template) throw new Error('no such template');
  return createUnit(template, { id: 'unit-1', name: 'Heron', at: START });
};
const heron = unitOf(0);

describe('a round', () => {
  it('briefs, and waits for the person before the first check', async () => {
    const w = roundWorld({ unit: heron });
    await w.settle();
    expect(w.said[0]).toContain('Before towing. Heron.');
    expect(w.entries).toEqual([]);
    expect(w.current()).toBeNull();
    await w.speak('start');
    expect(w.entries.map((entry) => entry.kind)).toEqual(['begun']);
    expect(w.current()?.key).toBe(w.round.plan.checks[0]?.key);
  });

  it('is walked to the end by voice alone, with a completion call', async () => {
    const w = roundWorld({ unit: heron });
    await w.speak('start');
    await w.answerAll();
    // Only the ten-minute reading may be left when the answers come faster than the furnace.
    if (w.actor.getSnapshot().hasTag('waiting')) {
      await w.pass(600_000);
      await w.answerAll();
    }
    expect(w.actor.getSnapshot().hasTag('wrap-up')).toBe(true);
    await w.speak('done');
    expect(w.entries.at(-1)?.kind).toBe('completed');
    const state = replay(w.round, w.entries);
    expect(state.checks.every((check) => check.status === 'answered')).toBe(true);
    expect(w.said).toContain('Round complete.');
  });

  it('reads back a value only after the record has it', async () => {
    const w = roundWorld({ unit: heron });
    await w.speak('start');
    const before = w.said.length;
    w.breakRecord('There is no room left on this device.');
    await w.speak('10');
    expect(w.said.slice(before).join(' ')).toContain('Not kept. There is no room left on this device.');
    expect(w.entries).toHaveLength(1);
    w.breakRecord(null);
    await w.speak('yes');
    expect(w.entries).toHaveLength(2);
    expect(w.said.at(-1)).not.toContain('Not kept');
  });

  it('holds for as long as it takes and comes back to exactly this check', async () => {
    const w = roundWorld({ unit: heron });
    await w.speak('start');
    await w.speak('10');
    const here = w.current()?.key;
    await w.speak('wait');
    expect(replay(w.round, w.entries).phase).toBe('held');
    await w.pass(24 * 3600_000);
    await w.speak('carry on');
    expect(w.current()?.key).toBe(here);
    expect(w.said.join(' ')).toContain('Last kept: outside temperature');
  });

  it('resumes after a crash at exactly that check, from the record alone', async () => {
    const w = roundWorld({ unit: heron });
    await w.speak('start');
    await w.answerAll((check) => check.key.startsWith('coupler'));
    const here = w.current()?.key;
    const again = w.crash();
    await again.settle();
    expect(again.current()?.key).toBe(here);
    expect(again.said[0]).toContain('Carrying on: Heron');
    expect(again.entries).toEqual(w.entries);
  });

  it('resumes where the person had gone, not where the order would be', async () => {
    const w = roundWorld({ unit: heron });
    await w.speak('start');
    const far = w.round.plan.checks.find((check) => check.check === 'deadbolt')?.key ?? '';
    w.actor.send({ type: 'check.requested', key: far });
    await w.settle();
    expect(w.current()?.key).toBe(far);
    const again = w.crash();
    await again.settle();
    expect(again.current()?.key).toBe(far);
  });

  it('keeps a skip with its reason and comes back to it from the wrap-up', async () => {
    const w = roundWorld({ unit: heron });
    await w.speak('start');
    await w.speak('10');
    const skipped = w.current()?.key ?? '';
    await w.speak('skip');
    await w.speak('frozen shut');
    expect(w.entries.at(-1)).toMatchObject({ kind: 'skipped', key: skipped, reason: 'frozen shut' });
    expect(w.current()?.key).not.toBe(skipped);
    w.actor.send({ type: 'finish.requested' });
    await w.settle();
    expect(w.said.join(' ')).toContain('skipped');
    w.actor.send({ type: 'check.requested', key: skipped });
    await w.settle();
    expect(w.current()?.key).toBe(skipped);
  });

  it('takes back the last answer and asks it again', async () => {
    const w = roundWorld({ unit: heron });
    await w.speak('start');
    const first = w.current()?.key;
    await w.speak('10');
    await w.speak('undo');
    expect(w.current()?.key).toBe(first);
    expect(replay(w.round, w.entries).byKey.get(first ?? '')?.status).toBe('open');
    await w.speak('12');
    const state = replay(w.round, w.entries).byKey.get(first ?? '');
    expect(state?.status).toBe('answered');
    expect(state?.superseded).toHaveLength(1);
  });

  it('goes back, and on again, without losing what is kept', async () => {
    const w = roundWorld({ unit: heron });
    await w.speak('start');
    const first = w.current()?.key;
    await w.speak('10');
    const second = w.current()?.key;
    await w.speak('back');
    expect(w.current()?.key).toBe(first);
    await w.speak('next');
    expect(w.current()?.key).toBe(second);
  });

  it('lights the furnace early and asks for the reading when it is due, at the end of a station', async () => {
    const w = roundWorld({ unit: heron });
    await w.speak('start');
    const timed = w.round.plan.checks.find((check) => check.timed !== null);
    expect(timed).toBeDefined();
    await w.answerAll((check) => check.station === 'tongue');
    expect(replay(w.round, w.entries).timers.map((timer) => timer.key)).toEqual([timed?.key]);
    await w.pass(600_000);
    expect(w.cues).toContain('due');
    const station = w.current()?.station;
    await w.answerAll((check) => check.station !== station);
    expect(w.current()?.key).toBe(timed?.key);
  });

  it('has a due reading waiting after a crash that lasted longer than the timer', async () => {
    const w = roundWorld({ unit: heron });
    await w.speak('start');
    await w.answerAll((check) => check.station === 'tongue');
    const again = w.crash();
    await again.settle();
    await again.pass(3600_000);
    expect(again.cues).toContain('due');
  });

  it('a round that is not complete says so, whatever was answered', async () => {
    const w = roundWorld({ unit: heron });
    await w.speak('start');
    await w.answerAll();
    expect(replay(w.round, w.entries).phase).toBe('under-way');
  });

  it('is walked by buttons alone with the ears closed', async () => {
    const w = roundWorld({ unit: heron, mute: true });
    w.actor.send({ type: 'round.begun', people: 1 });
    await w.settle();
    for (let turn = 0; turn < 300; turn += 1) {
      const check = w.current();
      if (!check) break;
      const { expects } = check;
      await w.press(
        expects.kind === 'state'
          ? { kind: 'state', verdict: 'ok', detail: null }
          : expects.kind === 'count'
            ? { kind: 'count', count: 0 }
            : expects.kind === 'choice'
              ? { kind: 'choice', option: expects.options[0]?.id ?? '', detail: null }
              : expects.kind === 'date'
                ? { kind: 'date', form: expects.form, value: expects.form === 'dot-week' ? '2024' : '2027-06' }
                : { kind: 'reading', si: 300, said: { value: 60, unit: expects.unit }, hedged: false },
      );
    }
    expect(w.actor.getSnapshot().hasTag('waiting') || w.actor.getSnapshot().hasTag('wrap-up')).toBe(true);
    const answered = w.entries.filter((entry) => entry.kind === 'answered');
    expect(answered.length).toBeGreaterThan(60);
    expect(answered.every((entry) => entry.kind === 'answered' && entry.how.via === 'button')).toBe(true);
  });

  it('moves a value to the other side when that was meant, and asks the first side again', async () => {
    const w = roundWorld({ unit: heron });
    await w.speak('start');
    await w.answerAll((check) => check.key === 'tire-pressure@left');
    await w.speak('62');
    await w.speak('no, the right one');
    const state = replay(w.round, w.entries);
    expect(state.byKey.get('tire-pressure@left')?.status).toBe('open');
    const right = state.byKey.get('tire-pressure@right')?.entry;
    expect(right).toMatchObject({ kind: 'answered', answer: { kind: 'reading', said: { value: 62, unit: 'psi' } } });
  });

  it('corrects the value just read back', async () => {
    const w = roundWorld({ unit: heron });
    await w.speak('start');
    await w.answerAll((check) => check.key === 'tire-pressure@left');
    await w.speak('62');
    expect(w.current()?.key).toBe('tread-depth@left');
    await w.speak('no, sixty-three');
    const entry = replay(w.round, w.entries).byKey.get('tire-pressure@left');
    expect(entry?.entry).toMatchObject({ answer: { said: { value: 63, unit: 'psi' } } });
    expect(entry?.superseded).toHaveLength(1);
    expect(w.current()?.key).toBe('tread-depth@left');
  });

  it('keeps entries in sequence without gaps, whatever happens', async () => {
    const w = roundWorld({ unit: heron });
    await w.speak('start');
    await w.speak('10');
    await w.speak('undo');
    await w.speak('12');
    await w.speak('wait');
    await w.speak('carry on');
    await w.speak('back');
    expect(w.entries.map((entry) => entry.seq)).toEqual(w.entries.map((_, index) => index));
  });
});

describe('what people say in one breath, and later', () => {
  it('keeps both sides of a mixed breath, each as it was said', async () => {
    const w = roundWorld({ unit: heron });
    await w.speak('start');
    w.actor.send({ type: 'check.requested', key: 'transport-pins@left' });
    await w.settle();
    await w.speak('left pinned, right not');
    const state = replay(w.round, w.entries);
    const verdict = (key: string) => {
      const entry = state.byKey.get(key)?.entry;
      return entry?.kind === 'answered' && entry.answer.kind === 'state' ? entry.answer.verdict : null;
    };
    expect([verdict('transport-pins@left'), verdict('transport-pins@right')]).toEqual(['ok', 'problem']);
  });

  it('changes a check that was answered long ago, by its name', async () => {
    const w = roundWorld({ unit: heron });
    await w.speak('start');
    await w.speak('10');
    const here = w.current()?.key;
    await w.speak('change the outside temperature to minus twelve');
    const entry = replay(w.round, w.entries).byKey.get('outside-temperature')?.entry;
    expect(entry?.kind === 'answered' && entry.answer.kind === 'reading' && entry.answer.said.value).toBe(-12);
    expect(entry?.kind === 'answered' && entry.supersedes).not.toBeNull();
    expect(w.current()?.key).toBe(here);
  });

  it('does not take a number for an answered check that is merely named', async () => {
    const w = roundWorld({ unit: heron });
    await w.speak('start');
    await w.speak('10');
    await w.speak('the outside temperature is twenty');
    const entry = replay(w.round, w.entries).byKey.get('outside-temperature')?.entry;
    expect(entry?.kind === 'answered' && entry.answer.kind === 'reading' && entry.answer.said.value).toBe(10);
  });

  it('asks in the style that the person wants, from the next check on', async () => {
    const w = roundWorld({ unit: heron });
    await w.speak('start');
    await w.speak('short questions');
    expect(w.said.at(-1)).toContain('Short questions from now on.');
    await w.speak('10');
    const next = w.current();
    expect(w.said.join(' ')).toContain(next?.lines.askTerse);
    await w.speak('full questions');
    await w.speak(next?.expects.kind === 'choice' ? (next.expects.options[0]?.label ?? '') : 'yes');
    expect(w.said.slice(-4).join(' ')).toContain(w.current()?.lines.ask);
  });
});
