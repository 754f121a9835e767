/**
 * The past of the unit that was looked at last, held so that only what was added since is read again. Twelve years of rounds
 * take a second to read and a twentieth of that to work through.
 */
import { partsPool } from '../../domain/files/partsPool.ts';
import type { Display } from '../../domain/voice/settings.ts';
import type { Record, RoundHeader, StoredRound } from '../../record/record.ts';
import { summarize, type UnitSummary, type Verdict } from './unitSummary.ts';

export interface Question {
  readonly unit: string;
  readonly display: Display;
  /** Epoch milliseconds. */
  readonly now: number;
}

export interface UnitCache {
  /** @returns null for a unit that the record knows nothing of */
  summary(question: Question): Promise<UnitSummary | null>;
}

/** Rounds read in one go: large enough to be fast, small enough that their copies never lie about all at once. */
const AT_ONCE = 48;

/** For the bench: how long the working out itself took, apart from reading. */
const WORKED_OUT = 'lookback worked out';

interface Held {
  readonly unit: string;
  readonly rounds: Map<string, StoredRound>;
  readonly verdicts: Map<string, Verdict>;
  readonly share: ReturnType<typeof partsPool>;
}

export function createUnitCache(record: Record): UnitCache {
  let held: Held | null = null;

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

  return {
    async summary({ unit: id, display, now }) {
      const [units, all, events] = await Promise.all([record.units(), record.rounds(), record.events(id)]);
      const unit = units.find((candidate) => candidate.id === id) ?? null;
      const headers = all.filter((header) => header.unit === id);
      if (unit === null && headers.length === 0) return null;
      const mine: Held = held?.unit === id ? held : { unit: id, rounds: new Map(), verdicts: new Map(), share: partsPool() };
      held = mine;
      await readRounds(mine, headers);
      const rounds = headers.flatMap((header) => mine.rounds.get(header.id) ?? []).reverse();
      const torn = headers.filter((header) => !mine.rounds.has(header.id));
      const start = performance.now();
      const summary = summarize(unit, { rounds, events, torn }, now, display, mine.verdicts);
      performance.measure(WORKED_OUT, { start });
      return summary;
    },
  };
}
