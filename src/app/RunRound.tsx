/** The round being walked, on the screen: session in, screen out. */
import { useEffect, useState, useSyncExternalStore } from 'react';
import type { Round } from '../domain/round/entry.ts';
import { RoundScreen } from '../ui/round/RoundScreen.tsx';
import { listenToHeadset } from './headset.ts';
import type { RoundSession } from './roundSession.ts';
import { keepAwake } from './wakeLock.ts';

export interface RunRoundProps {
  readonly session: RoundSession;
  readonly round: Round;
  readonly display: 'us' | 'metric';
  readonly now: () => number;
  readonly onLeave: () => void;
  readonly onOpenRound: () => void;
}

const TICK_MS = 1000;

export function RunRound({ session, round, display, now, onLeave, onOpenRound }: RunRoundProps) {
  const view = useSyncExternalStore(session.subscribe, session.view);
  const [time, setTime] = useState(now);
  useEffect(() => {
    const timer = setInterval(() => setTime(now()), TICK_MS);
    return () => clearInterval(timer);
  }, [now]);
  useEffect(() => keepAwake(), []);
  useEffect(
    () =>
      // A press of the headset never answers a check: it could be anything in a pocket.
      listenToHeadset(`Gloveside: ${round.plan.unit.name}`, (press) =>
        session.request({
          type: 'command',
          command: press === 'next' ? 'next' : press === 'previous' ? 'back' : 'repeat',
          via: 'key',
        }),
      ),
    [session, round],
  );
  return (
    <div
      className="run"
      data-phase={view.phase}
      data-check={view.current?.key ?? ''}
      data-ears={view.ears.state}
      data-turn={view.entries.length}
      data-waiting={view.phase === 'wrap-up' && view.timers.some((timer) => !timer.due)}
    >
      <RoundScreen
        view={view}
        now={time}
        display={display}
        onRequest={session.request}
        onLeave={onLeave}
        onOpenRound={onOpenRound}
        onPhoto={(picture, key) => void session.keepPicture(picture, key)}
      />
    </div>
  );
}
