/** The kitchen table: a unit, its trends, a round played back, a report, comparing, files. Loaded when first opened. */
import '../../ui/lookback/lookback.css';
import { useState } from 'react';
import { remindersFor } from '../../domain/files/reminders.ts';
import { compareRounds } from '../../domain/history/compareRounds.ts';
import { compareUnits } from '../../domain/history/compareUnits.ts';
import { openFindings } from '../../domain/history/findings.ts';
import type { RoundRecord } from '../../domain/history/series.ts';
import { timelineOf } from '../../domain/history/timeline.ts';
import { judgementsOf, verdictOf } from '../../domain/round/judging.ts';
import { presentRound } from '../../domain/round/present.ts';
import { type RoundState, replay } from '../../domain/round/replay.ts';
import { roundName } from '../../domain/round/topics.ts';
import { trendsFor } from '../../domain/trend/trendsFor.ts';
import { type HappenedForm, type ReadHappening, readHappening } from '../../domain/unit/happened.ts';
import type { Unit } from '../../domain/unit/unit.ts';
import type { Display } from '../../domain/voice/settings.ts';
import type { Record } from '../../record/record.ts';
import { RecordError } from '../../record/recordError.ts';
import { ComparePage } from '../../ui/lookback/ComparePage.tsx';
import { ReportPage } from '../../ui/lookback/ReportPage.tsx';
import { RoundPage } from '../../ui/lookback/RoundPage.tsx';
import { TrendPage } from '../../ui/lookback/TrendPage.tsx';
import { UnitPage } from '../../ui/lookback/UnitPage.tsx';
import { newId } from '../clock.ts';
import { hashOf } from '../route.ts';
import type { Services } from '../services.ts';
import { useStore } from '../store.ts';
import { recordsOf } from '../unitData.ts';
import { type Loaded, useRecordData } from '../useRecordData.ts';
import { Missing } from './Missing.tsx';
import type { ScreenProps } from './screenProps.ts';

const print = () => window.print();
const roundHref = (round: string) => hashOf({ at: 'round', round });

interface UnitLookback {
  readonly unit: Unit;
  readonly units: readonly Unit[];
  readonly rounds: readonly RoundRecord[];
  readonly events: Awaited<ReturnType<typeof recordsOf>>['events'];
}

async function unitLookback({ record }: Services, id: string): Promise<UnitLookback | null> {
  const units = await record.units();
  const unit = units.find((candidate) => candidate.id === id);
  if (!unit) return null;
  const { rounds, events } = await recordsOf(record, id);
  return { unit, units, rounds, events };
}

/** Loading, failed and missing are told in the same way everywhere. */
function Shown<T>({
  loaded,
  missing,
  go,
  children,
}: {
  readonly loaded: Loaded<T | null>;
  readonly missing: string;
  readonly go: ScreenProps['go'];
  readonly children: (value: T) => React.ReactNode;
}) {
  if (loaded.state === 'loading') return <main className="page" aria-busy="true" />;
  if (loaded.state === 'failed') return <Missing sentence={loaded.sentence} onHome={() => go({ at: 'home' })} />;
  if (loaded.value === null) return <Missing sentence={missing} onHome={() => go({ at: 'home' })} />;
  return children(loaded.value);
}

const NO_UNIT = 'This unit is not on this device.';
const NO_ROUND = 'This round is not on this device.';

export function UnitPlace({ services, go, unit: id }: ScreenProps & { readonly unit: string }) {
  const { display } = useStore(services.settings);
  const loaded = useRecordData(services, `unit ${id}`, () => unitLookback(services, id));
  return (
    <Shown loaded={loaded} missing={NO_UNIT} go={go}>
      {({ unit, rounds, events }) => {
        const now = services.clock.now();
        const { statements } = trendsFor({ rounds, events }, now, display);
        const states = rounds.map(({ round, entries }) => replay(round, entries)).reverse();
        const newest = states.find((state) => state.phase === 'complete');
        return (
          <UnitPage
            unit={unit}
            now={now}
            due={remindersFor(unit, { rounds, events }, statements)}
            trends={statements}
            rounds={states.map((state) => listed(state, display))}
            verdictSentences={newest ? verdictOf(newest, display).sentences : null}
            findings={openFindings({ rounds, events })}
            hrefs={{
              round: roundHref,
              start: (kind) => hashOf({ at: 'start', unit: id, kind }),
              resume: (round) => hashOf({ at: 'run', round }),
              trends: hashOf({ at: 'trends', unit: id }),
              compare: hashOf({ at: 'compare', unit: id }),
              edit: hashOf({ at: 'unit-edit', unit: id }),
              weights: hashOf({ at: 'weights', unit: id }),
              report: (round) => hashOf({ at: 'report', round }),
            }}
            display={display}
            onHappened={(form) => writeDown(services, unit, form)}
            onMended={(mending) => void appendMended(services, id, mending)}
            photoUrl={(photo) => urlOf(services.record.photo(photo))}
          />
        );
      }}
    </Shown>
  );
}

function listed(state: RoundState, display: Display) {
  const complete = state.phase === 'complete';
  const { id, startedAt, plan } = state.round;
  return { id, kind: plan.round, startedAt, complete, verdict: complete ? verdictOf(state, display).outcome : null };
}

/** Checked at once, so that the form can answer; kept right after. */
function writeDown({ record, clock, settings, changes, trouble }: Services, unit: Unit, form: HappenedForm): ReadHappening {
  const at = clock.now();
  const read = readHappening(form, unit, at, settings.get().display);
  if (read.ok) {
    const next = read.unit;
    record
      .appendEvent({ ...read.event, id: newId(), unit: unit.id, at })
      .then(() => (next === null ? undefined : record.putUnit(next)))
      .then(() => changes.update((count) => count + 1))
      .catch((error: unknown) =>
        trouble.set(error instanceof RecordError ? error.sentence : 'That could not be kept. Try again.'),
      );
  }
  return read;
}

async function appendMended(
  { record, clock, changes, trouble }: Services,
  unit: string,
  mending: { readonly finding: string; readonly what: string; readonly who: string | null; readonly cost: number | null },
): Promise<void> {
  try {
    await record.appendEvent({ id: newId(), unit, at: clock.now(), kind: 'mended', ...mending });
    changes.update((count) => count + 1);
  } catch (error) {
    trouble.set(error instanceof RecordError ? error.sentence : 'That could not be kept. Try again.');
  }
}

export function TrendsPlace({ services, go, unit: id }: ScreenProps & { readonly unit: string }) {
  const { display } = useStore(services.settings);
  const loaded = useRecordData(services, `unit ${id}`, () => unitLookback(services, id));
  return (
    <Shown loaded={loaded} missing={NO_UNIT} go={go}>
      {({ unit, rounds, events }) => {
        const { series, statements } = trendsFor({ rounds, events }, services.clock.now(), display);
        return (
          <TrendPage
            unit={unit}
            series={series}
            statements={statements}
            display={display}
            unitHref={hashOf({ at: 'unit', unit: id })}
            roundHref={roundHref}
            onPrint={print}
          />
        );
      }}
    </Shown>
  );
}

export function RoundPlace({ services, go, round: id }: ScreenProps & { readonly round: string }) {
  const { display } = useStore(services.settings);
  const { record } = services;
  const loaded = useRecordData(services, `round ${id}`, () => record.round(id));
  return (
    <Shown loaded={loaded} missing={NO_ROUND} go={go}>
      {({ round, entries }) => {
        const state = replay(round, entries);
        return (
          <RoundPage
            round={round}
            complete={state.phase === 'complete'}
            verdict={verdictOf(state, display)}
            timeline={timelineOf(round, entries, judgementsOf(state, display), display)}
            display={display}
            unitHref={hashOf({ at: 'unit', unit: round.unit })}
            reportHref={hashOf({ at: 'report', round: id })}
            clipUrl={(clip) => urlOf(record.clip(clip))}
            photoUrl={(photo) => urlOf(record.photo(photo))}
            onDeletePhoto={(photo) => deletePhoto(services, photo)}
            onDelete={() =>
              void record.deleteRound(id, services.clock.now()).then(() => {
                services.changes.update((count) => count + 1);
                go({ at: 'unit', unit: round.unit });
              })
            }
            onPrint={print}
          />
        );
      }}
    </Shown>
  );
}

async function deletePhoto({ record, clock, changes, trouble }: Services, photo: string): Promise<boolean> {
  try {
    await record.deletePhoto(photo, clock.now());
    changes.update((count) => count + 1);
    return true;
  } catch (error) {
    trouble.set(error instanceof RecordError ? error.sentence : 'The picture could not be deleted. Try again.');
    return false;
  }
}

async function urlOf(stored: ReturnType<Record['clip']>): Promise<string | null> {
  const found = await stored;
  return found ? URL.createObjectURL(new Blob([found.bytes], { type: found.type })) : null;
}

export function ReportPlace({ services, go, round: id }: ScreenProps & { readonly round: string }) {
  const { display } = useStore(services.settings);
  const loaded = useRecordData(services, `report ${id}`, async () => {
    const stored = await services.record.round(id);
    return { ...stored, ...(await recordsOf(services.record, stored.round.unit)) };
  });
  return (
    <Shown loaded={loaded} missing={NO_ROUND} go={go}>
      {({ round, entries, rounds, events }) => {
        const state = replay(round, entries);
        const now = services.clock.now();
        return (
          <ReportPage
            round={round}
            people={state.people}
            complete={state.phase === 'complete'}
            endedAt={entries.at(-1)?.at ?? round.startedAt}
            verdict={verdictOf(state, display)}
            lines={presentRound(state, new Map(), AT_REST, display, now).lines}
            findings={openFindings({ rounds, events }).open}
            trends={trendsFor({ rounds, events }, now, display).statements}
            display={display}
            roundHref={roundHref}
            onPrint={print}
            photoUrl={(photo) => urlOf(services.record.photo(photo))}
          />
        );
      }}
    </Shown>
  );
}

const AT_REST = {
  phase: 'complete',
  key: null,
  saying: '',
  speaking: false,
  partial: null,
  offers: [],
  ears: { state: 'off', sentence: null, progress: null, provider: null },
  trouble: null,
} as const;

/** Two rounds of one unit, or the latest rounds of two units. */
export function ComparePlace({ services, go, unit: id }: ScreenProps & { readonly unit: string }) {
  const { display } = useStore(services.settings);
  const [chosen, setChosen] = useState<{ readonly left: string | null; readonly right: string | null }>({
    left: null,
    right: null,
  });
  const loaded = useRecordData(services, `compare ${id}`, async () => {
    const own = await unitLookback(services, id);
    if (!own) return null;
    const others = [];
    for (const other of own.units.filter((unit) => unit.id !== id && unit.demo === own.unit.demo)) {
      const latest = (await recordsOf(services.record, other.id, 1)).rounds[0];
      if (latest) others.push({ unit: other, latest });
    }
    return { ...own, others };
  });
  return (
    <Shown loaded={loaded} missing={NO_UNIT} go={go}>
      {({ unit, rounds, others }) => {
        const newestFirst = [...rounds].reverse();
        const all = [
          ...newestFirst.map((record) => ({ id: record.round.id, label: labelOf(record), record, unit })),
          ...others.map((other) => ({
            id: other.latest.round.id,
            label: `${other.unit.name}, latest round`,
            record: other.latest,
            unit: other.unit,
          })),
        ];
        const left = all.find((choice) => choice.id === (chosen.left ?? newestFirst[1]?.round.id));
        const right = all.find((choice) => choice.id === (chosen.right ?? newestFirst[0]?.round.id));
        return (
          <ComparePage
            heading={`Compare: ${unit.name}`}
            demo={unit.demo}
            choices={all.map(({ id: choice, label }) => ({ id: choice, label }))}
            left={left?.id ?? null}
            right={right?.id ?? null}
            onChoose={(side, choice) => setChosen((now) => ({ ...now, [side]: choice }))}
            checks={left && right ? compareRounds(left.record, right.record, display) : []}
            figures={left && right && left.unit.id !== right.unit.id ? compareUnits(left.unit, right.unit, display) : null}
            onPrint={print}
          />
        );
      }}
    </Shown>
  );
}

function labelOf({ round }: RoundRecord): string {
  const day = new Date(round.startedAt).toLocaleDateString('en-US', { year: 'numeric', month: 'short', day: 'numeric' });
  return `${roundName(round.plan.round)}, ${day}`;
}
