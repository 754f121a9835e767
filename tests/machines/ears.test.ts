import { describe, expect, it } from 'vitest';
import { createActor, fromCallback, fromPromise } from 'xstate';
import { earsMachine } from '../../machines/earsMachine.ts';
import type { EarsEvent, EarsId, EarsState, ListenRequest } from '../../src/domain/voice/ports.ts';
import { heard, REQUEST } from './support/exchange.ts';

function ears(found: Partial<Record<EarsId, EarsState>>, providers: readonly EarsId[] = ['built-in', 'browser']) {
  const live: { id: EarsId; request: ListenRequest; report: (event: EarsEvent) => void }[] = [];
  const prepared: EarsId[] = [];
  const actor = createActor(
    earsMachine.provide({
      actors: {
        prepare: fromPromise<EarsState, { id: EarsId }>(async ({ input }) => {
          prepared.push(input.id);
          return found[input.id] ?? { kind: 'ready' };
        }),
        hear: fromCallback<{ type: 'unused' }, { id: EarsId; request: ListenRequest }>(({ input, sendBack }) => {
          const session = { ...input, report: (event: EarsEvent) => sendBack({ type: 'provider.reported', event }) };
          live.push(session);
          return () => {
            live.splice(live.indexOf(session), 1);
          };
        }),
      },
    }),
    { input: { providers } },
  );
  actor.start();
  const settle = async () => {
    for (let turn = 0; turn < 8; turn += 1) await Promise.resolve();
  };
  return { actor, live, prepared, settle };
}

describe('the ears', () => {
  it('open for an exchange as soon as a recogniser is ready', async () => {
    const { actor, live, settle } = ears({});
    const events: EarsEvent[] = [];
    actor.send({ type: 'listen.requested', request: REQUEST, reply: (event) => events.push(event) });
    expect(live).toHaveLength(0);
    await settle();
    expect(live.map((session) => session.id)).toEqual(['built-in']);
    live[0]?.report(heard('pinned'));
    expect(events).toEqual([heard('pinned')]);
  });

  it('fall back to the next recogniser when one is not available', async () => {
    const { actor, live, prepared, settle } = ears({
      'built-in': { kind: 'unavailable', sentence: 'The voice model is damaged.' },
    });
    actor.send({ type: 'listen.requested', request: REQUEST, reply: () => {} });
    await settle();
    expect(prepared).toEqual(['built-in', 'browser']);
    expect(live.map((session) => session.id)).toEqual(['browser']);
  });

  it('hand over in the middle of an exchange without losing it', async () => {
    const { actor, live, settle } = ears({}, ['browser', 'built-in']);
    const events: EarsEvent[] = [];
    actor.send({ type: 'listen.requested', request: REQUEST, reply: (event) => events.push(event) });
    await settle();
    live[0]?.report({ type: 'failed', reason: 'network', sentence: 'No network.' });
    await settle();
    expect(live.map((session) => session.id)).toEqual(['built-in']);
    expect(events).toEqual([]);
    live[0]?.report(heard('pinned'));
    expect(events).toEqual([heard('pinned')]);
  });

  it('tell the exchange when nothing is left to hear with', async () => {
    const { actor, settle } = ears({
      'built-in': { kind: 'unavailable', sentence: 'No model.' },
      browser: { kind: 'unavailable', sentence: 'No recogniser here.' },
    });
    const events: EarsEvent[] = [];
    actor.send({ type: 'listen.requested', request: REQUEST, reply: (event) => events.push(event) });
    await settle();
    expect(events).toEqual([{ type: 'failed', reason: 'other', sentence: 'No recogniser here.' }]);
    actor.send({ type: 'listen.requested', request: REQUEST, reply: (event) => events.push(event) });
    expect(events).toHaveLength(2);
  });

  it('do not ask another recogniser for a microphone that was refused', async () => {
    const { actor, prepared, settle } = ears({ 'built-in': { kind: 'denied' } });
    const events: EarsEvent[] = [];
    actor.send({ type: 'listen.requested', request: REQUEST, reply: (event) => events.push(event) });
    await settle();
    expect(prepared).toEqual(['built-in']);
    expect(actor.getSnapshot().matches('denied')).toBe(true);
    expect(events[0]).toMatchObject({ type: 'failed', reason: 'denied' });
  });

  it('close at once when the exchange is over, and a late stop does not close its successor', async () => {
    const { actor, live, settle } = ears({});
    const first = () => {};
    const second = () => {};
    actor.send({ type: 'listen.requested', request: REQUEST, reply: first });
    await settle();
    actor.send({ type: 'listen.requested', request: { ...REQUEST, mode: 'confirm' }, reply: second });
    actor.send({ type: 'listen.stopped', reply: first });
    expect(live.map((session) => session.request.mode)).toEqual(['confirm']);
    actor.send({ type: 'listen.stopped', reply: second });
    expect(live).toEqual([]);
  });

  it('never have two recognisers open at once', async () => {
    const { actor, live, settle } = ears({});
    for (let turn = 0; turn < 5; turn += 1) {
      actor.send({ type: 'listen.requested', request: REQUEST, reply: () => {} });
      await settle();
      expect(live).toHaveLength(1);
    }
  });
});
