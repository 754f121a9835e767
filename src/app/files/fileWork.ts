/**
 * Making a file of the record, and taking one in. Twelve years are thirty megabytes: this runs in a Worker, and in the page
 * only where there is none.
 */

import { readingsCsv } from '../../domain/files/csv.ts';
import { exportAll } from '../../domain/files/exportAll.ts';
import { parseExport } from '../../domain/files/parseExport.ts';
import type { TellProgress } from '../../domain/files/progress.ts';
import type { TakenFile } from '../../domain/files/takenFile.ts';
import { packZip, unpackZip, type ZippedMedia } from '../../domain/files/zip.ts';
import { buildSeries } from '../../domain/history/series.ts';
import type { Entry } from '../../domain/round/entry.ts';
import type { Display } from '../../domain/voice/settings.ts';
import type { Record } from '../../record/record.ts';
import { RecordError } from '../../record/recordError.ts';

export type MadeKind = 'record' | 'record-with-media' | 'csv';

/** @throws RecordError when the record cannot be read */
export async function makeFile(record: Record, what: MadeKind, display: Display, tell: TellProgress): Promise<Blob> {
  const step = (name: Parameters<TellProgress>[0]['step']) => tell({ step: name, done: 0, of: null });
  step('reading-record');
  const data = await record.exportDataset();
  step('writing');
  if (what === 'csv') {
    const entries = new Map<string, Entry[]>(data.rounds.map(({ id }) => [id, []]));
    for (const entry of data.entries) entries.get(entry.round)?.push(entry);
    const rounds = data.rounds.map((round) => ({ round, entries: entries.get(round.id) ?? [] }));
    const unitNames = new Map(data.units.map((unit) => [unit.id, unit.name]));
    return new Blob([readingsCsv({ series: buildSeries(rounds, data.events), unitNames, display })], { type: 'text/csv' });
  }
  const text = exportAll(data);
  if (what === 'record') return new Blob([text], { type: 'application/json' });
  const media = await mediaOf(record, tell);
  step('packing');
  return new Blob([packZip(text, media) as Uint8Array<ArrayBuffer>], { type: 'application/zip' });
}

async function mediaOf(record: Record, tell: TellProgress): Promise<readonly ZippedMedia[]> {
  const [clips, photos] = await Promise.all([record.clipIds(), record.photoIds()]);
  const of = clips.length + photos.length;
  const media: ZippedMedia[] = [];
  const wanted = [
    ...clips.map((id) => ({ kind: 'clip', id, read: () => record.clip(id) }) as const),
    ...photos.map((id) => ({ kind: 'photo', id, read: () => record.photo(id) }) as const),
  ];
  for (const [done, { kind, id, read }] of wanted.entries()) {
    tell({ step: 'gathering-media', done, of });
    const stored = await read();
    if (stored) media.push({ kind, id, type: stored.type, bytes: new Uint8Array(stored.bytes) });
  }
  return media;
}

const ZIP_MARK = [0x50, 0x4b] as const;

/**
 * Everything of a file, or nothing and a sentence. Never throws but what `mayAdd` throws.
 * @param mayAdd asked when the file is understood; nothing is written before it resolves
 */
export async function takeFile(record: Record, file: Blob, tell: TellProgress, mayAdd: () => Promise<void>): Promise<TakenFile> {
  const step = (name: Parameters<TellProgress>[0]['step']) => tell({ step: name, done: 0, of: null });
  const refused = (sentence: string) => ({ kind: 'refused', sentence }) as const;
  step('opening');
  const bytes = await file.arrayBuffer().then(
    (buffer) => new Uint8Array(buffer),
    () => null,
  );
  if (bytes === null) return refused(UNREADABLE);
  const zipped = ZIP_MARK.every((mark, index) => bytes[index] === mark) ? unpackZip(bytes) : null;
  if (zipped && !zipped.ok) return refused(zipped.sentence);
  step('checking');
  const parsed = parseExport(zipped ? zipped.text : new TextDecoder().decode(bytes));
  if (!parsed.ok) return refused(parsed.sentence);
  await mayAdd();
  step('adding');
  try {
    const { units, rounds, entries, events, conflicts } = await record.importDataset(parsed.data);
    const media = zipped?.media ?? [];
    for (const [done, { kind, id, type, bytes: content }] of media.entries()) {
      tell({ step: 'adding-media', done, of: media.length });
      const copy = content.slice().buffer;
      if (kind === 'clip') await record.putClip(id, copy, type);
      else await record.putPhoto(id, copy, type);
    }
    const warnings = [...parsed.warnings, ...(zipped?.warnings ?? []), ...differing(conflicts.length)];
    return { kind: 'done', units, rounds, entries, events, warnings };
  } catch (error) {
    return refused(error instanceof RecordError ? error.sentence : UNREADABLE);
  }
}

const UNREADABLE = 'The file could not be read. Choose it again, or another one.';

function differing(count: number): string[] {
  if (count === 0) return [];
  return [
    `${count} ${count === 1 ? 'thing differs' : 'things differ'} here and in the file: what is here was left as it is. Keep the file if you may want the other.`,
  ];
}
