/**
 * A rehearsal: a demo unit, a person who answers by a script, a clock that runs fast, and a record that lives only as long as
 * the screen. Everything between is the real thing.
 */
import { planRound } from '../domain/plan/planRound.ts';
import { createRehearsalScript } from '../domain/rehearsal/script.ts';
import type { Round } from '../domain/round/entry.ts';
import { DEMO_UNITS } from '../domain/unit/demo.ts';
import { createMemoryRecord } from '../record/memoryRecord.ts';
import { fastClock, newId } from './clock.ts';
import type { OpenResult } from './openRound.ts';
import { createRoundSession } from './roundSession.ts';
import type { Services } from './services.ts';

/** Ten minutes of furnace in twenty seconds. */
const TIMES = 30;

export function openRehearsal({ settings, voice, update }: Services): OpenResult {
  const unit = DEMO_UNITS.find((candidate) => candidate.name === 'Kestrel') ?? DEMO_UNITS[0];
  if (!unit) return { kind: 'refused', sentence: 'The demo units are missing from this version.' };
  const clock = fastClock(TIMES);
  const at = clock.now();
  const round: Round = {
    schema: 1,
    id: newId(),
    unit: unit.id,
    startedAt: at,
    plan: planRound(unit, 'before-towing', at),
    demo: true,
  };
  const script = createRehearsalScript(round.plan, at);
  const { display } = settings.get();
  const session = createRoundSession({
    round,
    entries: [],
    past: new Map(),
    style: 'full',
    display,
    ears: voice.scripted(script),
    mute: false,
    mouth: voice.mouth,
    playCue: voice.playCue,
    adjustLoudness: voice.adjustLoudness,
    chooseStyle: () => undefined,
    record: createMemoryRecord(),
    clock,
    newId,
  });
  update.roundOpened();
  return {
    kind: 'open',
    open: {
      session,
      round,
      clock,
      close: () => {
        session.stop();
        update.roundClosed();
      },
    },
  };
}
