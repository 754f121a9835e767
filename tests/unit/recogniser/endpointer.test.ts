import { describe, expect, it } from 'vitest';
import { ANSWER_ENDPOINTS, Endpointer, NOTE_ENDPOINTS } from '../../../src/speech/recogniser/endpointer.ts';

/** Runs of [dB, frames]; gives the frame of each event. */
function run(endpointer: Endpointer, runs: readonly (readonly [db: number, frames: number])[]): string[] {
  const events: string[] = [];
  let at = 0;
  for (const [db, frames] of runs) {
    for (let index = 0; index < frames; index += 1, at += 1) {
      const event = endpointer.frame(db + ((at * 7) % 5) * 0.3);
      if (event !== 'none') events.push(`${event} ${at}`);
    }
  }
  return events;
}

describe('where speech begins and ends', () => {
  it('starts within 120 ms of speech and ends half a second after it', () => {
    const [started, ended, ...more] = run(new Endpointer(), [
      [-60, 100],
      [-30, 60],
      [-60, 100],
    ]);
    expect(more).toEqual([]);
    expect(Number(started!.split(' ')[1])).toBeLessThan(112);
    const end = Number(ended!.split(' ')[1]);
    expect(end).toBeGreaterThan(160 + 40);
    expect(end).toBeLessThan(160 + 60);
  });

  it('does not end in the pause inside "one hundred … five"', () => {
    expect(
      run(new Endpointer(), [
        [-60, 100],
        [-30, 40],
        [-58, 35],
        [-32, 30],
        [-60, 100],
      ]).length,
    ).toBe(2);
  });

  it('is patient with a note', () => {
    const endpointer = new Endpointer(NOTE_ENDPOINTS);
    expect(
      run(endpointer, [
        [-60, 100],
        [-30, 60],
        [-60, 120],
        [-30, 60],
        [-60, 200],
      ]).length,
    ).toBe(2);
  });

  it('takes a click for nothing', () => {
    expect(
      run(new Endpointer(), [
        [-60, 100],
        [-10, 3],
        [-60, 100],
      ]),
    ).toEqual([]);
  });

  it('takes steady wind for noise after a while, and hears speech above it', () => {
    const endpointer = new Endpointer();
    run(endpointer, [
      [-60, 100],
      [-35, 400],
    ]);
    endpointer.begin(ANSWER_ENDPOINTS);
    const events = run(endpointer, [
      [-35, 100],
      [-20, 60],
      [-35, 100],
    ]);
    expect(events.length).toBe(2);
  });

  it('cuts off what never ends', () => {
    const endpointer = new Endpointer({ ...ANSWER_ENDPOINTS, mostFrames: 100 });
    let frames = 0;
    let ended = false;
    for (let at = 0; at < 60; at += 1) endpointer.frame(-60);
    // Louder and louder, so that the floor cannot catch up.
    for (let at = 0; at < 300 && !ended; at += 1, frames += 1) ended = endpointer.frame(-40 + at * 0.5) === 'ended';
    expect(ended).toBe(true);
    expect(frames).toBeLessThan(130);
  });

  it('stays sane for levels that are no numbers', () => {
    const endpointer = new Endpointer();
    for (const level of [-Infinity, -120, -60, 0]) endpointer.frame(level);
    expect(Number.isFinite(endpointer.floorDb)).toBe(true);
  });
});
