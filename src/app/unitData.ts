/** Rounds and events of one unit, as looking back wants them. A round that cannot be read is counted, never hidden. */
import type { RoundRecord } from '../domain/history/series.ts';
import type { UnitEvent } from '../domain/round/entry.ts';
import type { Record, RoundHeader } from '../record/record.ts';

export interface UnitRecords {
  /** Oldest first. */
  readonly rounds: readonly RoundRecord[];
  readonly events: readonly UnitEvent[];
  /** Headers of rounds that could not be read. */
  readonly torn: readonly RoundHeader[];
}

/** @param headers of any units, newest first, where they are read already */
export async function recordsOf(
  record: Record,
  unit: string,
  most = Number.POSITIVE_INFINITY,
  headers?: readonly RoundHeader[],
): Promise<UnitRecords> {
  const own = (headers ?? (await record.rounds())).filter((header) => header.unit === unit).slice(0, most);
  const [{ rounds, torn }, events] = await Promise.all([record.roundsOf(own.map(({ id }) => id)), record.events(unit)]);
  const lost = new Set(torn);
  return { rounds: [...rounds].reverse(), events, torn: own.filter(({ id }) => lost.has(id)) };
}
