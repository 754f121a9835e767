/** Starts a new round or takes up an unfinished one: lock, plan or record, past, session. */
import type { RoundKind } from '../domain/checks/check.ts';
import { settledLugChecks } from '../domain/history/lugChecks.ts';
import type { PastOfCheck } from '../domain/history/past.ts';
import type { RoundRecord } from '../domain/history/series.ts';
import { dueSentences, wheelsDue } from '../domain/lugs/retorque.ts';
import { planRound } from '../domain/plan/planRound.ts';
import type { Round } from '../domain/round/entry.ts';
import { type Unit, wheelPositions } from '../domain/unit/unit.ts';
import type { Record, RoundLock } from '../record/record.ts';
import { type Clock, newId } from './clock.ts';
import { createRoundSession, type RoundSession } from './roundSession.ts';
import type { Services } from './services.ts';

export interface OpenRound {
  readonly session: RoundSession;
  readonly round: Round;
  /** The clock that the round runs by. */
  readonly clock: Clock;
  close(): void;
}

export type OpenResult =
  | { readonly kind: 'open'; readonly open: OpenRound }
  | { readonly kind: 'refused'; readonly sentence: string };

/** Rounds that the past is taken from: enough for a trend over years, few enough to read in a moment. */
const PAST_ROUNDS = 120;

export async function startRound(services: Services, unit: Unit, kind: RoundKind): Promise<OpenResult> {
  const at = services.clock.now();
  const { mounted, due } = await lugsDue(services, unit, at);
  const round: Round = {
    schema: 1,
    id: newId(),
    unit: unit.id,
    startedAt: at,
    plan: planRound(unit, kind, at, { display: services.settings.get().display, mounted, due }),
    demo: unit.demo,
  };
  return open(services, round, []);
}

export async function resumeRound(services: Services, id: string): Promise<OpenResult> {
  const stored = await services.record.round(id);
  return open(services, stored.round, stored.entries);
}

async function open(
  services: Services,
  round: Round,
  entries: Parameters<typeof createRoundSession>[0]['entries'],
): Promise<OpenResult> {
  const { record, settings, voice, update, clock } = services;
  const lock = await record.lockRound(round.id);
  if (!lock) {
    return {
      kind: 'refused',
      sentence: 'This round is open in another tab or window. Go on there, or close it and try again here.',
    };
  }
  const { display, style } = settings.get();
  const ears = voice.ears();
  // Filled in while the briefing is spoken: nobody waits in the cold for years of rounds to be read.
  const past = new Map<string, PastOfCheck>();
  void calm().then(() => fillPast(services, round, past));
  const session = createRoundSession({
    round,
    entries,
    past,
    style,
    display,
    ears,
    mute: ears.length === 0,
    mouth: voice.mouth,
    playCue: voice.playCue,
    adjustLoudness: voice.adjustLoudness,
    chooseStyle: (chosen) => services.saveSettings({ ...settings.get(), style: chosen }),
    record,
    clock,
    newId,
  });
  update.roundOpened();
  return { kind: 'open', open: { session, round, clock, close: () => closing(session, lock, services) } };
}

function closing(session: RoundSession, lock: RoundLock, { update, changes }: Services): void {
  session.stop();
  lock.release();
  update.roundClosed();
  changes.update((count) => count + 1);
}

/** The browser has nothing more urgent to do: the first words have been said and the screen is drawn. Half a second at most. */
const calm = () =>
  new Promise<void>((resolve) => {
    if ('requestIdleCallback' in window) window.requestIdleCallback(() => resolve(), { timeout: 500 });
    else setTimeout(resolve, 100);
  });

async function fillPast({ record, settings, clock }: Services, round: Round, past: Map<string, PastOfCheck>): Promise<void> {
  try {
    const [{ pastOf }, rounds, events] = await Promise.all([
      import('./pastOf.ts'),
      earlierRounds(record, round),
      record.events(round.unit),
    ]);
    const found = pastOf({ plan: round.plan, rounds, events, display: settings.get().display, now: clock.now() });
    for (const [key, value] of found) past.set(key, value);
  } catch {
    // Without a past the round is asked as if it were the first: less comfortable, not less safe.
  }
}

async function earlierRounds(record: Record, round: Round): Promise<readonly RoundRecord[]> {
  const headers = (await record.rounds()).filter(
    (header) => header.unit === round.unit && header.id !== round.id && header.demo === round.demo,
  );
  return readable(record, headers.slice(0, PAST_ROUNDS));
}

async function readable(record: Record, headers: readonly { readonly id: string }[]): Promise<readonly RoundRecord[]> {
  const earlier: RoundRecord[] = [];
  for (const header of headers) {
    try {
      earlier.push(await record.round(header.id));
    } catch {
      // A torn round says nothing about the past; it is shown, with its trouble, where rounds are listed.
    }
  }
  return earlier;
}

/** Wheels that were off not long ago, and what to say of them. Rounds are read only where there was such a wheel. */
async function lugsDue({ record }: Services, unit: Unit, at: number) {
  const events = await record.events(unit.id);
  const offs = events.filter(({ kind }) => kind === 'wheel-mounted' || kind === 'tire-changed').map((event) => event.at);
  if (offs.length === 0) return { mounted: [], due: [] };
  const since = Math.min(...offs);
  const headers = (await record.rounds()).filter(({ unit: of, startedAt }) => of === unit.id && startedAt >= since);
  const rounds = await readable(record, headers.slice(0, PAST_ROUNDS));
  const wheels = wheelsDue(wheelPositions(unit.axles), events, settledLugChecks(rounds), at);
  return {
    mounted: wheels.map(({ position, odometerM, pulledM }) => ({ position, odometerM, pulledM })),
    due: dueSentences(wheels),
  };
}
