import { describe, expect, it } from 'vitest';
import { heard, topic, world } from './support/exchange.ts';

describe('the exchange', () => {
  it('asks first and opens the ears only when it has finished speaking', async () => {
    const w = world();
    expect(w.earsOpen()).toBe(false);
    await w.settle();
    expect(w.said).toEqual(['Pins?']);
    expect(w.earsOpen()).toBe(true);
  });

  it('keeps what it believes, and ends only when the record has it', async () => {
    const w = world();
    await w.settle();
    w.hear(heard('pinned'));
    expect(w.actor.getSnapshot().status).toBe('active');
    expect(w.reported).toEqual([]);
    await w.settle();
    expect(w.kept).toHaveLength(1);
    expect(w.reported).toHaveLength(1);
    expect(w.actor.getSnapshot().output).toEqual({ kind: 'kept', readBack: ['Pinned.'] });
  });

  it('does not listen while it keeps', async () => {
    const w = world();
    await w.settle();
    w.hear(heard('pinned'));
    expect(w.earsOpen()).toBe(false);
  });

  it('takes a press while it is still speaking and falls silent', async () => {
    const w = world();
    w.actor.send({ type: 'answer.pressed', answer: { kind: 'state', verdict: 'ok', detail: null }, via: 'button' });
    await w.settle();
    expect(w.kept).toHaveLength(1);
    expect(w.actor.getSnapshot().status).toBe('done');
  });

  it('asks again, more helpfully, and never gives up by itself', async () => {
    const w = world();
    await w.settle();
    w.hear(heard('mumble'));
    await w.settle();
    expect(w.said.at(-1)).toBe('Say that once more.');
    w.hear({ type: 'not-understood' });
    await w.settle();
    expect(w.said.at(-1)).toBe('Again 1.');
    expect(w.cues).toEqual(['not-sure', 'not-sure']);
    expect(w.earsOpen()).toBe(true);
  });

  const held = (w: ReturnType<typeof world>) => w.actor.getSnapshot().context.faint?.hypotheses[0]?.transcript ?? null;
  const faintly = (words: string) => {
    const event = heard(words);
    if (event.type !== 'heard') throw new Error('not heard');
    return { type: 'not-understood', faint: event.hearing } as const;
  };

  it('holds the next hearing against one that only a question came of, and against no other', async () => {
    const w = world();
    const after: (string | null)[] = [];
    for (const event of [
      heard('mumble'),
      heard('grumble'),
      faintly('hm'),
      heard('maybe'),
      heard('no'),
      { type: 'not-understood' } as const,
    ]) {
      await w.settle();
      w.hear(event);
      after.push(held(w));
    }
    expect(after).toEqual(['mumble', 'grumble', 'hm', 'maybe', null, null]);
  });

  it('of what was hardly heard lets only a question come, whatever it may have been', async () => {
    const plain = topic();
    const seen: (string | null)[] = [];
    const w = world(
      topic({
        consider: (one) => {
          seen.push(one.faint?.hypotheses[0]?.transcript ?? null);
          return plain.consider(one);
        },
      }),
    );
    for (const words of ['pinned', 'skip it', 'take a picture', 'yes', 'hello']) {
      await w.settle();
      w.hear(faintly(words));
    }
    await w.settle();
    expect(w.kept).toEqual([]);
    expect(w.said.slice(-5)).toEqual(['Again 0.', 'Again 1.', 'Again 2.', 'Again 3.', 'Again 4.']);
    expect(new Set(seen)).toEqual(new Set([null, 'pinned', 'skip it', 'take a picture', 'yes']));
    w.hear(faintly('maybe'));
    await w.settle();
    expect(w.said.at(-1)).toBe('Pinned, is that right?');
    w.hear(heard('yes'));
    await w.settle();
    expect(w.kept).toHaveLength(1);
  });

  it('passes over talk that is not for it, without a sound', async () => {
    const w = world();
    await w.settle();
    w.hear(heard('hello'));
    await w.settle();
    expect(w.said).toEqual(['Pins?']);
    expect(w.cues).toEqual([]);
    expect(w.earsOpen()).toBe(true);
  });

  it('confirms a doubtful value and keeps it on yes', async () => {
    const w = world();
    await w.settle();
    w.hear(heard('maybe'));
    await w.settle();
    expect(w.said.at(-1)).toBe('Pinned, is that right?');
    expect(w.requests.at(-1)?.mode).toBe('confirm');
    expect(w.kept).toEqual([]);
    w.hear(heard('yes'));
    await w.settle();
    expect(w.kept).toHaveLength(1);
  });

  it('keeps nothing on no and asks afresh', async () => {
    const w = world();
    await w.settle();
    w.hear(heard('maybe'));
    await w.settle();
    w.hear(heard('no'));
    await w.settle();
    expect(w.kept).toEqual([]);
    expect(w.requests.at(-1)?.mode).toBe('answer');
    w.hear(heard('pinned'));
    await w.settle();
    expect(w.kept).toHaveLength(1);
  });

  it('reminds each once, waiting longer each time, then waits in silence', async () => {
    const w = world();
    await w.settle();
    w.clock.increment(9_999);
    await w.settle();
    expect(w.said).toEqual(['Pins?']);
    w.clock.increment(1);
    await w.settle();
    expect(w.said.at(-1)).toBe('Say pinned or loose.');
    w.clock.increment(19_999);
    await w.settle();
    expect(w.said).toHaveLength(2);
    w.clock.increment(1);
    await w.settle();
    expect(w.said.at(-1)).toBe('The buttons work too.');
    w.clock.increment(3_600_000);
    await w.settle();
    expect(w.said).toHaveLength(3);
    expect(w.earsOpen()).toBe(true);
  });

  it('asks why a check is skipped and keeps the reason as it was said', async () => {
    const w = world();
    await w.settle();
    w.hear(heard('skip it'));
    await w.settle();
    expect(w.said.at(-1)).toBe('Why is it skipped?');
    w.hear(heard('frozen shut'));
    await w.settle();
    expect(w.kept[0]).toMatchObject({ kind: 'skipped', reason: 'frozen shut' });
    expect(w.actor.getSnapshot().status).toBe('done');
  });

  it('needs no second question when the reason came along', async () => {
    const w = world();
    await w.settle();
    w.hear(heard('skip it frozen'));
    await w.settle();
    expect(w.kept[0]).toMatchObject({ kind: 'skipped', reason: 'frozen' });
  });

  it('takes a note in passing and goes on with the same check', async () => {
    const w = world();
    await w.settle();
    w.hear(heard('make a note'));
    await w.settle();
    expect(w.requests.at(-1)?.mode).toBe('free');
    w.hear(heard('frayed near the drum'));
    await w.settle();
    expect(w.kept[0]).toMatchObject({ kind: 'noted', text: 'frayed near the drum' });
    expect(w.said.at(-1)).toBe('Noted.');
    expect(w.actor.getSnapshot().status).toBe('active');
    expect(w.requests.at(-1)?.mode).toBe('answer');
  });

  it('drops a dictation that nobody speaks into', async () => {
    const w = world();
    await w.settle();
    w.hear(heard('make a note'));
    await w.settle();
    w.clock.increment(25_000);
    await w.settle();
    expect(w.kept).toEqual([]);
    expect(w.requests.at(-1)?.mode).toBe('answer');
  });

  it('explains why, repeats, and gets louder without leaving the check', async () => {
    const w = world();
    await w.settle();
    w.hear(heard('why'));
    await w.settle();
    expect(w.said.at(-1)).toBe('Because pins carry the weight.');
    w.hear(heard('say again'));
    await w.settle();
    expect(w.said.at(-1)).toBe('Because pins carry the weight.');
    w.hear(heard('louder'));
    await w.settle();
    expect(w.loudness).toEqual([1]);
    expect(w.actor.getSnapshot().status).toBe('active');
  });

  it('hands a command that moves the round to the round', async () => {
    const w = world();
    await w.settle();
    w.hear(heard('hold on'));
    await w.settle();
    expect(w.actor.getSnapshot().output).toEqual({ kind: 'command', command: 'wait', text: null });
  });

  it('says so when the record fails, keeps the answer, and tries again', async () => {
    const w = world();
    await w.settle();
    w.breakRecord('There is no room left.');
    w.hear(heard('pinned'));
    await w.settle();
    expect(w.actor.getSnapshot().matches('keepFailed')).toBe(true);
    expect(w.said.at(-1)).toContain('There is no room left.');
    expect(w.kept).toEqual([]);
    w.breakRecord(null);
    w.hear(heard('yes'));
    await w.settle();
    expect(w.kept).toHaveLength(1);
    expect(w.actor.getSnapshot().output).toEqual({ kind: 'kept', readBack: ['Pinned.'] });
  });

  it('goes on with the buttons when the ears fail', async () => {
    const w = world();
    await w.settle();
    w.hear({ type: 'failed', reason: 'denied', sentence: 'The microphone is not allowed.' });
    await w.settle();
    expect(w.said.at(-1)).toBe('The microphone is not allowed.');
    expect(w.earsOpen()).toBe(false);
    w.actor.send({ type: 'answer.pressed', answer: { kind: 'state', verdict: 'ok', detail: null }, via: 'button' });
    await w.settle();
    expect(w.kept).toHaveLength(1);
  });

  it('tells of wind once and not each time', async () => {
    const w = world();
    await w.settle();
    const wind = { type: 'sound', problem: 'wind', sentence: 'Too windy.' } as const;
    w.hear(wind);
    await w.settle();
    w.hear(wind);
    await w.settle();
    expect(w.said.filter((line) => line === 'Too windy.')).toHaveLength(1);
  });

  it('is deaf when muted and hears again when asked to', async () => {
    const w = world(topic(), true);
    await w.settle();
    expect(w.earsOpen()).toBe(false);
    w.actor.send({ type: 'listening.requested', on: true });
    expect(w.earsOpen()).toBe(true);
    w.actor.send({ type: 'listening.requested', on: false });
    expect(w.earsOpen()).toBe(false);
  });

  it('shows interim words and forgets them', async () => {
    const w = world();
    await w.settle();
    w.hear({ type: 'listening' });
    w.hear({ type: 'partial', transcript: 'pin' });
    expect(w.actor.getSnapshot().context.partial).toBe('pin');
    expect(w.actor.getSnapshot().context.ears).toBe('hearing');
    w.hear(heard('hello'));
    expect(w.actor.getSnapshot().context.partial).toBeNull();
  });

  it('takes a picture when it is asked to: hold still, the picture, kept, and the check goes on', async () => {
    const w = world();
    await w.settle();
    w.hear(heard('take a picture'));
    expect(w.earsOpen()).toBe(false);
    await w.settle();
    await w.settle();
    expect(w.said).toEqual(['Pins?', 'Hold still.', 'Picture kept.']);
    expect(w.cues).toEqual(['taken', 'heard']);
    expect(w.kept).toMatchObject([{ kind: 'noted', photo: 'p1' }]);
    expect(w.reported).toHaveLength(1);
    expect(w.earsOpen()).toBe(true);
    w.hear(heard('pinned'));
    await w.settle();
    expect(w.actor.getSnapshot().output).toEqual({ kind: 'kept', readBack: ['Pinned.'] });
  });

  it('says why there is no picture and listens on', async () => {
    const w = world();
    await w.settle();
    w.breakCamera('The camera is not allowed here.');
    w.hear(heard('take a picture'));
    await w.settle();
    await w.settle();
    expect(w.said.at(-1)).toBe('The camera is not allowed here.');
    expect(w.actor.getSnapshot().context.trouble).toBe('The camera is not allowed here.');
    expect(w.cues).toEqual(['wrong']);
    expect(w.kept).toEqual([]);
    expect(w.earsOpen()).toBe(true);
  });

  it('lets a press call a picture off', async () => {
    const w = world();
    await w.settle();
    w.hear(heard('take a picture'));
    w.actor.send({ type: 'answer.pressed', answer: { kind: 'state', verdict: 'ok', detail: null }, via: 'button' });
    await w.settle();
    expect(w.kept).toMatchObject([{ kind: 'answered' }]);
    expect(w.cues).toEqual(['heard']);
  });

  it('does not wait for a camera for ever', async () => {
    const w = world();
    await w.settle();
    w.hear(heard('take a picture'));
    w.clock.increment(30_000);
    await w.settle();
    expect(w.said.at(-1)).toContain('No picture was taken.');
    expect(w.earsOpen()).toBe(true);
  });

  it('tells what happened beside it, without cutting the question short', async () => {
    const w = world();
    w.actor.send({ type: 'aside.told', lines: ['Picture kept.'], trouble: null });
    await w.settle();
    expect(w.said).toEqual(['Pins?']);
    w.actor.send({ type: 'aside.told', lines: ['There is no room.'], trouble: 'There is no room.' });
    await w.settle();
    expect(w.said.at(-1)).toBe('There is no room.');
    expect(w.actor.getSnapshot().context.trouble).toBe('There is no room.');
    expect(w.earsOpen()).toBe(true);
  });
});
