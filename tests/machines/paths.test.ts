import { describe, expect, it } from 'vitest';
import type { AnyActorLogic, AnyMachineSnapshot, EventFromLogic } from 'xstate';
import { getShortestPaths } from 'xstate/graph';
import { earsMachine } from '../../machines/earsMachine.ts';
import { exchangeMachine } from '../../machines/exchangeMachine.ts';
import { updateMachine } from '../../machines/updateMachine.ts';
import type { EarsEvent } from '../../src/domain/voice/ports.ts';
import { heard, REQUEST, topic } from './support/exchange.ts';

/** Every state node of a machine, as paths from its root. */
function nodesOf(node: { readonly id: string; readonly states: Record<string, never> }): string[] {
  return Object.values(node.states).flatMap((child) => [(child as { id: string }).id, ...nodesOf(child)]);
}

function activeNodes(snapshot: AnyMachineSnapshot): string[] {
  return snapshot._nodes.map((node) => node.id);
}

const wait = { type: 'ears.reported' as const };
const report = (event: EarsEvent) => ({ ...wait, event });

describe('every path', () => {
  // Outcomes of the invoked actors are given as events, so that the chart is walked without running any of them.
  const sayDone = ['exchange.open.speaking', 'exchange.keepFailed.telling'].map((id) => ({
    type: `xstate.done.actor.0.${id}`,
    output: undefined,
  }));
  const exchangeEvents = [
    ...sayDone,
    { type: 'xstate.done.actor.0.exchange.keeping', output: [] },
    { type: 'xstate.error.actor.0.exchange.keeping', error: new Error('There is no room left.') },
    { type: 'xstate.after.patience.exchange.open.waiting' },
    { type: 'xstate.done.actor.0.exchange.open.picturing.telling', output: undefined },
    { type: 'xstate.done.actor.0.exchange.open.picturing.taking', output: 'p1' },
    { type: 'xstate.error.actor.0.exchange.open.picturing.taking', error: new Error('There is no camera.') },
    { type: 'xstate.after.pictureLimit.exchange.open.picturing' },
    report(heard('take a picture')),
    { type: 'aside.told', lines: ['Picture kept.'], trouble: null },
    { type: 'xstate.after.dictation.exchange.open.waiting' },
    report(heard('pinned')),
    report(heard('maybe')),
    report(heard('yes')),
    report(heard('no')),
    report(heard('mumble')),
    report(heard('hello')),
    report(heard('skip it')),
    report(heard('make a note')),
    report(heard('why')),
    report(heard('hold on')),
    report({ type: 'not-understood' }),
    report({ type: 'sound', problem: 'wind', sentence: 'Too windy.' }),
    report({ type: 'failed', reason: 'denied', sentence: 'The microphone is not allowed.' }),
    { type: 'answer.pressed', answer: { kind: 'state', verdict: 'ok', detail: null }, via: 'button' },
    { type: 'skip.requested', reason: 'frozen', via: 'button' },
    { type: 'note.requested', text: 'frayed', finding: true, via: 'button' },
    { type: 'listening.requested', on: false },
    { type: 'listening.requested', on: true },
    { type: 'keep.retried' },
  ] as unknown as EventFromLogic<typeof exchangeMachine>[];

  const paths = getShortestPaths(exchangeMachine, {
    input: { topic: topic(), mute: false },
    events: exchangeEvents,
    limit: 20_000,
    serializeState: (snapshot) => {
      const { context } = snapshot;
      return JSON.stringify([
        snapshot.value,
        context.mute,
        context.dictating,
        context.offers.length,
        context.goesOn,
        Math.min(context.reminded, 2),
        context.pending !== null,
        context.output,
      ]);
    },
  });

  it('of an exchange reaches every state of the chart', () => {
    const reached = new Set(paths.flatMap((path) => activeNodes(path.state)));
    // States that are left at once are passed through, never rested in.
    const transient = new Set(['exchange.considering', 'exchange.open.waiting.choosing', 'exchange.keepFailed.asking.choosing']);
    const missing = nodesOf(exchangeMachine.root as never).filter((id) => !reached.has(id) && !transient.has(id));
    expect(missing).toEqual([]);
  });

  it('of an exchange can be left by a press, without a word spoken', () => {
    for (const { state } of paths) {
      if (state.status !== 'active') continue;
      const presses = state.matches('open')
        ? [
            {
              type: 'answer.pressed' as const,
              answer: { kind: 'state' as const, verdict: 'ok' as const, detail: null },
              via: 'button' as const,
            },
          ]
        : state.matches('keepFailed')
          ? [{ type: 'keep.retried' as const }]
          : [];
      for (const press of presses) expect(state.can(press), JSON.stringify(state.value)).toBe(true);
      expect(presses.length > 0 || state.matches('keeping'), JSON.stringify(state.value)).toBe(true);
    }
  });

  it('of an exchange that ends has kept something or says what was wanted', () => {
    const ended = paths.filter((path) => path.state.status === 'done');
    expect(ended.length).toBeGreaterThan(3);
    for (const { state } of ended) expect(state.output).toHaveProperty('kind');
  });

  it('of the ears reaches every state and never listens without a request', () => {
    const reply = () => {};
    const earsPaths = getShortestPaths(earsMachine, {
      input: { providers: ['built-in', 'browser'] },
      events: [
        { type: 'prepare.requested' },
        { type: 'listen.requested', request: REQUEST, reply },
        { type: 'listen.stopped', reply },
        { type: 'xstate.done.actor.0.ears.preparing', output: { kind: 'ready' } },
        { type: 'xstate.done.actor.0.ears.preparing', output: { kind: 'denied' } },
        { type: 'xstate.done.actor.0.ears.preparing', output: { kind: 'unavailable', sentence: 'No.' } },
        { type: 'xstate.error.actor.0.ears.preparing', error: new Error('no') },
        { type: 'provider.reported', event: { type: 'failed', reason: 'network', sentence: 'No.' } },
        { type: 'provider.reported', event: heard('pinned') },
      ] as unknown as EventFromLogic<typeof earsMachine>[],
      limit: 5_000,
      serializeState: (snapshot) => JSON.stringify([snapshot.value, snapshot.context.index, snapshot.context.listening !== null]),
    });
    const reached = new Set(earsPaths.flatMap((path) => activeNodes(path.state)));
    expect(nodesOf(earsMachine.root as never).filter((id) => !reached.has(id))).toEqual([]);
    for (const { state } of earsPaths) {
      if (state.matches({ ready: 'hearing' })) expect(state.context.listening).not.toBeNull();
    }
  });

  it('of an update applies it only with no round open', () => {
    const logic = updateMachine.provide({ actions: { applyUpdate: () => {} } }) as AnyActorLogic as typeof updateMachine;
    const updatePaths = getShortestPaths(logic, {
      events: [{ type: 'version.found' }, { type: 'round.opened' }, { type: 'round.closed' }, { type: 'update.requested' }],
    });
    const applying = updatePaths.filter((path) => path.state.matches({ version: 'applying' }));
    expect(applying.length).toBeGreaterThan(0);
    for (const { steps } of applying) {
      const at = steps.findIndex((step) => step.event.type === 'update.requested');
      const opened = steps
        .slice(0, at)
        .reduce((count, { event }) => count + (event.type === 'round.opened' ? 1 : event.type === 'round.closed' ? -1 : 0), 0);
      expect(opened).toBeLessThanOrEqual(0);
    }
  });
});
