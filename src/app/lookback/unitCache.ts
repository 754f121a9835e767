/**
 * The past of the units that were looked at, held so that only what was added since is read again, and what nothing was
 * added to is not worked out again. Twelve years of rounds take ten times as long to read as to work through.
 */
import { partsPool } from '../../domain/files/partsPool.ts';
import { type Trends, trendsFor, type UnitData } from '../../domain/trend/trendsFor.ts';
import type { Unit } from '../../domain/unit/unit.ts';
import type { Display } from '../../domain/voice/settings.ts';
import type { Record, RoundHeader, StoredRound } from '../../record/record.ts';
import { summarize, type UnitSummary, type UnitTrends, type Verdict, verdictsOf } from './unitSummary.ts';

export interface Question {
  readonly unit: string;
  readonly display: Display;
  /** Epoch milliseconds. */
  readonly now: number;
  /** Whether the verdict of every round is wanted, which takes longest. */
  readonly verdicts?: boolean;
}

export interface UnitCache {
  /** Both: @returns null for a unit that the record knows nothing of */
  trends(question: Question): Promise<UnitTrends | null>;
  summary(question: Question): Promise<UnitSummary | null>;
}

/** Rounds read in one go: large enough to be fast, small enough that their copies never lie about all at once. */
const AT_ONCE = 48;
/** Entries held of all units together: those of twelve years of three units are half of it, some forty megabytes. */
const MOST_HELD = 150_000;
/** What is said depends on how long ago things were, in days. */
const DAY_MS = 86_400_000;

/** For the bench: how long the working out itself took, apart from reading. */
const TRENDS_MEASURE = 'lookback trends';
const SUMMARY_MEASURE = 'lookback summary';

interface Held {
  readonly rounds: Map<string, StoredRound>;
  readonly verdicts: Map<string, Verdict>;
  readonly share: ReturnType<typeof partsPool>;
  /** What `trends` and `summary` were worked out from; nothing that matters to them is missing in it. */
  key: string;
  trends: Trends | null;
  summary: Omit<UnitSummary, 'verdicts'> | null;
}

interface Present {
  readonly held: Held;
  readonly unit: Unit | null;
  readonly data: UnitData;
  readonly torn: number;
}

/** @param mostHeld entries, of all units together; the unit that was looked at last is held however many it has */
export function createUnitCache(record: Record, mostHeld = MOST_HELD): UnitCache {
  /** The one that was looked at last comes last. */
  const units = new Map<string, Held>();

  const heldOf = (id: string): Held => {
    const held = units.get(id) ?? {
      rounds: new Map(),
      verdicts: new Map(),
      share: partsPool(),
      key: '',
      trends: null,
      summary: null,
    };
    units.delete(id);
    units.set(id, held);
    return held;
  };

  const letGo = () => {
    let entries = 0;
    for (const [turn, [id, held]] of [...units].reverse().entries()) {
      for (const stored of held.rounds.values()) entries += stored.entries.length;
      if (turn > 0 && entries > mostHeld) units.delete(id);
    }
  };

  const readRounds = async (into: Held, headers: readonly RoundHeader[]) => {
    const present = new Set(headers.map(({ id }) => id));
    for (const id of into.rounds.keys()) if (!present.has(id)) into.rounds.delete(id);
    const missing = headers.filter(({ id, entries }) => into.rounds.get(id)?.entries.length !== entries).map(({ id }) => id);
    for (let from = 0; from < missing.length; from += AT_ONCE) {
      const { rounds, torn } = await record.roundsOf(missing.slice(from, from + AT_ONCE));
      for (const { round, entries } of rounds) into.rounds.set(round.id, { round: into.share(round), entries });
      for (const id of torn) into.rounds.delete(id);
    }
  };

  /** The whole past as it is now, and what was worked out from it if nothing has changed since. */
  const present = async ({ unit: id, display, now }: Question): Promise<Present | null> => {
    const [revisions, all, events] = await Promise.all([record.units(), record.rounds(), record.events(id)]);
    const unit = revisions.find((candidate) => candidate.id === id) ?? null;
    const headers = all.filter((header) => header.unit === id);
    if (unit === null && headers.length === 0) {
      units.delete(id);
      return null;
    }
    const held = heldOf(id);
    await readRounds(held, headers);
    letGo();
    const rounds = headers.flatMap((header) => held.rounds.get(header.id) ?? []).reverse();
    // Entries are only ever added, events never change: these name the whole content.
    const key = JSON.stringify([
      display,
      Math.floor(now / DAY_MS),
      unit,
      rounds.map(({ round, entries }) => [round.id, entries.length]),
      events.map((event) => event.id),
    ]);
    if (key !== held.key) Object.assign(held, { key, trends: null, summary: null });
    return { held, unit, data: { rounds, events }, torn: headers.length - rounds.length };
  };

  const trendsOf = ({ held, data }: Present, { now, display }: Question): Trends => {
    held.trends ??= measured(TRENDS_MEASURE, () => trendsFor(data, now, display));
    return held.trends;
  };

  return {
    async trends(question) {
      const found = await present(question);
      return found && { ...trendsOf(found, question), torn: found.torn };
    },
    async summary(question) {
      const found = await present(question);
      if (!found) return null;
      const { held, unit, data, torn } = found;
      const { statements } = trendsOf(found, question);
      return measured(SUMMARY_MEASURE, () => {
        held.summary ??= summarize(unit, data, statements, torn);
        const verdicts = question.verdicts ? verdictsOf(data, question.display, held.verdicts) : new Map<string, Verdict>();
        return { ...held.summary, torn, verdicts };
      });
    },
  };
}

function measured<T>(name: string, work: () => T): T {
  const start = performance.now();
  const result = work();
  performance.measure(name, { start });
  return result;
}
