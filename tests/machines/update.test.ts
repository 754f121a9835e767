import { describe, expect, it } from 'vitest';
import { createActor } from 'xstate';
import { updateMachine } from '../../machines/updateMachine.ts';

function update() {
  const applied: string[] = [];
  const actor = createActor(updateMachine.provide({ actions: { applyUpdate: () => applied.push('applied') } }));
  actor.start();
  return { actor, applied };
}

describe('a new version', () => {
  it('never applies itself', () => {
    const { actor, applied } = update();
    actor.send({ type: 'version.found' });
    expect(applied).toEqual([]);
  });

  it('waits for the end of a round even when the person agrees', () => {
    const { actor, applied } = update();
    actor.send({ type: 'round.opened' });
    actor.send({ type: 'version.found' });
    actor.send({ type: 'update.requested' });
    expect(applied).toEqual([]);
    actor.send({ type: 'round.closed' });
    expect(applied).toEqual([]);
    actor.send({ type: 'update.requested' });
    expect(applied).toEqual(['applied']);
  });

  it('is applied once', () => {
    const { actor, applied } = update();
    actor.send({ type: 'version.found' });
    actor.send({ type: 'update.requested' });
    actor.send({ type: 'update.requested' });
    expect(applied).toHaveLength(1);
  });
});
