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

export async function recordsOf(record: Record, unit: string, most = Number.POSITIVE_INFINITY): Promise<UnitRecords> {
  const headers = (await record.rounds()).filter((header) => header.unit === unit).slice(0, most);
  const rounds: RoundRecord[] = [];
  const torn: RoundHeader[] = [];
  for (const header of headers) {
    try {
      rounds.push(await record.round(header.id));
    } catch {
      torn.push(header);
    }
  }
  return { rounds: rounds.reverse(), events: await record.events(unit), torn };
}
