/** The kitchen table: a unit, its trends, a round played back, a report, comparing, files. Loaded when first opened. */
import '../../ui/lookback/lookback.css';
import { useState } from 'react';
import { compareRounds } from '../../domain/history/compareRounds.ts';
import { compareUnits } from '../../domain/history/compareUnits.ts';
import type { Findings } from '../../domain/history/findings.ts';
import { buildSeries } from '../../domain/history/series.ts';
import { timelineOf } from '../../domain/history/timeline.ts';
import { judgementsOf, verdictOf } from '../../domain/round/judging.ts';
import { presentRound } from '../../domain/round/present.ts';
import { replay } from '../../domain/round/replay.ts';
import { roundName } from '../../domain/round/topics.ts';
import { type HappenedForm, type ReadHappening, readHappening } from '../../domain/unit/happened.ts';
import type { Unit } from '../../domain/unit/unit.ts';
import type { Display } from '../../domain/voice/settings.ts';
import type { Record, RoundHeader, StoredRound } from '../../record/record.ts';
import { RecordError } from '../../record/recordError.ts';
import { ComparePage } from '../../ui/lookback/ComparePage.tsx';
import { ReportPage } from '../../ui/lookback/ReportPage.tsx';
import { RoundPage } from '../../ui/lookback/RoundPage.tsx';
import { TrendPage } from '../../ui/lookback/TrendPage.tsx';
import { UnitPage } from '../../ui/lookback/UnitPage.tsx';
import { newId } from '../clock.ts';
import { summaryOf, trendsOf } from '../lookback/lookback.ts';
import type { UnitSummary } from '../lookback/unitSummary.ts';
import { hashOf } from '../route.ts';
import type { Services } from '../services.ts';
import { useStore } from '../store.ts';
import { type Loaded, useRecordData } from '../useRecordData.ts';
import { Missing } from './Missing.tsx';
import type { ScreenProps } from './screenProps.ts';

const print = () => window.print();
const roundHref = (round: string) => hashOf({ at: 'round', round });

interface UnitFirst {
  readonly unit: Unit;
  /** Newest first. */
  readonly headers: readonly RoundHeader[];
  /** The newest complete round that can be read. */
  readonly newest: StoredRound | null;
}

/** What stands on the unit's page at once; everything that needs the whole past comes after. */
async function unitFirst({ record }: Services, id: string): Promise<UnitFirst | null> {
  const [units, all] = await Promise.all([record.units(), record.rounds()]);
  const unit = units.find((candidate) => candidate.id === id);
  if (!unit) return null;
  const headers = all.filter((header) => header.unit === id);
  const last = headers.find(({ completedAt }) => completedAt !== null);
  const newest = last ? ((await record.roundsOf([last.id])).rounds[0] ?? null) : null;
  return { unit, headers, newest };
}

/** The past of a unit, worked through beside the page. */
function useSummary(services: Services, unit: string | null, display: Display): Loaded<UnitSummary | null> {
  return useRecordData(services, `summary ${unit} ${display}`, async () =>
    unit === null ? null : summaryOf(services.record, { unit, display, now: services.clock.now(), verdicts: true }),
  );
}

const NO_FINDINGS: Findings = { open: [], mended: [] };

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
  const loaded = useRecordData(services, `unit ${id}`, () => unitFirst(services, id));
  const past = useSummary(services, id, display);
  return (
    <Shown loaded={loaded} missing={NO_UNIT} go={go}>
      {({ unit, headers, newest }) => {
        const now = services.clock.now();
        const summary = past.state === 'ready' ? past.value : null;
        const verdict = newest ? verdictOf(replay(newest.round, newest.entries), display) : null;
        return (
          <UnitPage
            unit={unit}
            now={now}
            past={pastText(past)}
            due={summary?.due ?? []}
            trends={summary?.statements ?? []}
            rounds={headers.map((header) => ({
              id: header.id,
              kind: header.kind,
              startedAt: header.startedAt,
              complete: header.completedAt !== null,
              verdict: header.id === newest?.round.id ? (verdict?.outcome ?? null) : (summary?.verdicts.get(header.id) ?? null),
            }))}
            verdictSentences={verdict?.sentences ?? null}
            findings={summary ?? NO_FINDINGS}
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

/** How far the past is worked through, or what is missing in it. */
function pastText(past: Loaded<{ readonly torn: number } | null>): 'pending' | string | null {
  if (past.state === 'loading') return 'pending';
  return past.state === 'failed' ? past.sentence : tornSentence(past.value?.torn ?? 0);
}

/** Rounds that cannot be read are told of, never passed over. */
function tornSentence(torn: number): string | null {
  if (torn === 0) return null;
  return `${torn === 1 ? 'One round is' : `${torn} rounds are`} damaged and left out of what is said here. Save a copy under Files before going on.`;
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
  const loaded = useRecordData(services, `trends first ${id}`, () => unitFirst(services, id));
  const past = useRecordData(services, `trends ${id} ${display}`, () =>
    trendsOf(services.record, { unit: id, display, now: services.clock.now() }),
  );
  return (
    <Shown loaded={loaded} missing={NO_UNIT} go={go}>
      {({ unit, headers, newest }) => {
        const trends = past.state === 'ready' ? past.value : null;
        return (
          <TrendPage
            unit={unit}
            past={pastText(past)}
            rounds={headers.length}
            // The last readings stand at once; the years before them join when they are read.
            series={trends?.series ?? buildSeries(newest === null ? [] : [newest], [])}
            statements={trends?.statements ?? []}
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
  const loaded = useRecordData(services, `report ${id} ${display}`, async () => {
    const stored = await services.record.round(id);
    const now = services.clock.now();
    return { ...stored, summary: await summaryOf(services.record, { unit: stored.round.unit, display, now }) };
  });
  return (
    <Shown loaded={loaded} missing={NO_ROUND} go={go}>
      {({ round, entries, summary }) => {
        const state = replay(round, entries);
        const now = services.clock.now();
        return (
          <ReportPage
            round={round}
            people={state.people}
            complete={state.phase === 'complete'}
            missing={tornSentence(summary?.torn ?? 0)}
            endedAt={entries.at(-1)?.at ?? round.startedAt}
            verdict={verdictOf(state, display)}
            lines={presentRound(state, new Map(), AT_REST, display, now).lines}
            findings={summary?.open ?? []}
            trends={summary?.statements ?? []}
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
    const [units, all] = await Promise.all([services.record.units(), services.record.rounds()]);
    const unit = units.find((candidate) => candidate.id === id);
    if (!unit) return null;
    const own = all.filter((header) => header.unit === id);
    const others = units
      .filter((other) => other.id !== id && other.demo === unit.demo)
      .flatMap((other) => {
        const latest = all.find((header) => header.unit === other.id);
        return latest ? [{ id: latest.id, label: `${other.name}, latest round`, unit: other }] : [];
      });
    const choices = [...own.map((header) => ({ id: header.id, label: labelOf(header), unit })), ...others];
    return { unit, choices, newest: own.slice(0, 2) };
  });
  const found = loaded.state === 'ready' ? loaded.value : null;
  const left = found?.choices.find((choice) => choice.id === (chosen.left ?? found.newest[1]?.id));
  const right = found?.choices.find((choice) => choice.id === (chosen.right ?? found.newest[0]?.id));
  const read = useRecordData(services, `compare rounds ${left?.id} ${right?.id}`, async () =>
    left && right ? (await services.record.roundsOf([left.id, right.id])).rounds : [],
  );
  const stored = (wanted: typeof left) =>
    read.state === 'ready' ? read.value.find(({ round }) => round.id === wanted?.id) : undefined;
  return (
    <Shown loaded={loaded} missing={NO_UNIT} go={go}>
      {({ unit, choices }) => {
        const [leftRound, rightRound] = [stored(left), stored(right)];
        return (
          <ComparePage
            heading={`Compare: ${unit.name}`}
            demo={unit.demo}
            choices={choices}
            left={left?.id ?? null}
            right={right?.id ?? null}
            onChoose={(side, choice) => setChosen((now) => ({ ...now, [side]: choice }))}
            checks={leftRound && rightRound ? compareRounds(leftRound, rightRound, display) : []}
            figures={left && right && left.unit.id !== right.unit.id ? compareUnits(left.unit, right.unit, display) : null}
            onPrint={print}
          />
        );
      }}
    </Shown>
  );
}

function labelOf({ startedAt, kind }: RoundHeader): string {
  const day = new Date(startedAt).toLocaleDateString('en-US', { year: 'numeric', month: 'short', day: 'numeric' });
  return `${roundName(kind)}, ${day}`;
}
