import { describe, expect, it } from 'vitest';
import { createRoundLocks, type LocksPort } from '../../../src/record/roundLock.ts';

/** As the Web Locks specification has `request` with `ifAvailable`: null when taken, held until the callback's promise ends. */
function givenLockManager(): NonNullable<LocksPort> {
  const held = new Set<string>();
  const request = async (name: string, _options: unknown, run: (lock: { name: string } | null) => unknown): Promise<unknown> => {
    if (held.has(name)) return run(null);
    held.add(name);
    try {
      return await run({ name });
    } finally {
      held.delete(name);
    }
  };
  return { request } as unknown as NonNullable<LocksPort>;
}

describe('createRoundLocks', () => {
  it('keeps a second tab out until the first lets go', async () => {
    const manager = givenLockManager();
    const [one, two] = [createRoundLocks(manager, 'record'), createRoundLocks(manager, 'record')];
    const lock = await one('round-1');
    expect(lock).not.toBeNull();
    expect(await two('round-1')).toBeNull();
    expect(await two('round-2')).not.toBeNull();
    lock?.release();
    await Promise.resolve();
    expect(await two('round-1')).not.toBeNull();
  });

  it('after a refusal the same tab may try again', async () => {
    const manager = givenLockManager();
    const [one, two] = [createRoundLocks(manager, 'record'), createRoundLocks(manager, 'record')];
    const lock = await one('round-1');
    await two('round-1');
    lock?.release();
    await Promise.resolve();
    expect(await two('round-1')).not.toBeNull();
  });

  it.each([
    ['there are no locks', null],
    [
      'the browser refuses locks',
      { request: () => Promise.reject(new DOMException('no', 'SecurityError')) } as unknown as LocksPort,
    ],
  ])('when %s, one page still runs a round once', async (_, locks) => {
    const lockRound = createRoundLocks(locks, 'record');
    const lock = await lockRound('round-1');
    expect(lock).not.toBeNull();
    expect(await lockRound('round-1')).toBeNull();
    lock?.release();
    expect(await lockRound('round-1')).not.toBeNull();
  });
});
