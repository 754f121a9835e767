/** Everything out as a file, and in again; reminders, spreadsheet, storage. */
import '../../ui/lookback/lookback.css';
import { useState } from 'react';
import { BACKUP_AT, backupState } from '../../domain/files/backup.ts';
import { readingsCsv } from '../../domain/files/csv.ts';
import { exportAll } from '../../domain/files/exportAll.ts';
import { remindersCalendar } from '../../domain/files/icalendar.ts';
import { parseExport } from '../../domain/files/parseExport.ts';
import { packZip, unpackZip, type ZippedMedia } from '../../domain/files/zip.ts';
import { buildSeries } from '../../domain/history/series.ts';
import type { Entry } from '../../domain/round/entry.ts';
import type { Record } from '../../record/record.ts';
import { RecordError } from '../../record/recordError.ts';
import { FilesPage, type ImportState } from '../../ui/lookback/FilesPage.tsx';
import { summaryOf } from '../lookback/lookback.ts';
import { canShareFiles, saveFile, shareFile } from '../saveFile.ts';
import type { Services } from '../services.ts';
import { useStore } from '../store.ts';
import { useRecordData } from '../useRecordData.ts';
import type { ScreenProps } from './screenProps.ts';

type Kind = 'record' | 'record-with-media' | 'csv' | 'reminders';

export function FilesPlace({ services }: ScreenProps) {
  const { record, clock, changes } = services;
  const { display } = useStore(services.settings);
  const [importing, setImporting] = useState<ImportState>({ kind: 'none' });
  const [busy, setBusy] = useState<string | null>(null);
  const view = useRecordData(services, 'files', () => storageView(record, clock.now()));
  const changed = () => changes.update((count) => count + 1);

  const make = async (what: Kind, deliver: (file: File) => void | Promise<void>) => {
    setBusy('Making the file.');
    try {
      await deliver(await fileFor(services, what, display));
      if (what === 'record' || what === 'record-with-media') await record.putMeta(BACKUP_AT, clock.now());
      setBusy(null);
      changed();
    } catch (error) {
      setBusy(
        error instanceof Error && error.name === 'AbortError'
          ? null
          : error instanceof RecordError
            ? error.sentence
            : 'The file could not be made. Free some space and try again.',
      );
    }
  };
  const take = async (file: File) => {
    setImporting({ kind: 'reading' });
    setImporting(await importFile(record, file));
    changed();
  };

  if (view.state !== 'ready') return <main className="page" aria-busy={view.state === 'loading'} />;
  return (
    <FilesPage
      backup={view.value.backup}
      storage={view.value.storage}
      importing={importing}
      busy={busy}
      onExport={(what) => void make(what, saveFile)}
      onShare={canShareFiles() ? () => void make('record', shareFile) : null}
      onImport={(file) => void take(file)}
      onPersist={() => void record.persist().then(changed)}
      onDropClips={() => void record.dropOldestClips(0).then(changed)}
    />
  );
}

async function storageView(record: Record, now: number) {
  const [room, units, rounds, clips, clipBytes, photos, backup] = await Promise.all([
    record.estimate(),
    record.units(),
    record.rounds(),
    record.clipIds(),
    record.clipBytesUsed(),
    record.photoIds(),
    record.meta(BACKUP_AT),
  ]);
  return {
    backup: backupState(rounds, backup, now),
    storage: { ...room, units: units.length, rounds: rounds.length, clips: clips.length, clipBytes, photos: photos.length },
  };
}

async function fileFor({ record, clock }: Services, what: Kind, display: 'us' | 'metric'): Promise<File> {
  const day = new Date(clock.now()).toISOString().slice(0, 10);
  const named = (extension: string, type: string, content: BlobPart) =>
    new File([content], `gloveside-${day}.${extension}`, { type });
  const data = await record.exportDataset();
  switch (what) {
    case 'record':
      return named('json', 'application/json', exportAll(data));
    case 'record-with-media':
      return named('zip', 'application/zip', packZip(exportAll(data), await mediaOf(record)).slice());
    case 'csv': {
      const entries = new Map<string, Entry[]>(data.rounds.map(({ id }) => [id, []]));
      for (const entry of data.entries) entries.get(entry.round)?.push(entry);
      const series = buildSeries(
        data.rounds.map((round) => ({ round, entries: entries.get(round.id) ?? [] })),
        data.events,
      );
      return named(
        'csv',
        'text/csv',
        readingsCsv({ series, unitNames: new Map(data.units.map((unit) => [unit.id, unit.name])), display }),
      );
    }
    case 'reminders': {
      const reminders = [];
      for (const unit of data.units.filter((candidate) => !candidate.archived)) {
        const summary = await summaryOf(record, { unit: unit.id, display, now: clock.now() });
        reminders.push(...(summary?.due ?? []));
      }
      return named('ics', 'text/calendar', remindersCalendar(reminders, clock.now()));
    }
  }
}

async function mediaOf(record: Record): Promise<readonly ZippedMedia[]> {
  const media: ZippedMedia[] = [];
  for (const id of await record.clipIds()) {
    const stored = await record.clip(id);
    if (stored) media.push({ kind: 'clip', id, type: stored.type, bytes: new Uint8Array(stored.bytes) });
  }
  for (const id of await record.photoIds()) {
    const stored = await record.photo(id);
    if (stored) media.push({ kind: 'photo', id, type: stored.type, bytes: new Uint8Array(stored.bytes) });
  }
  return media;
}

const ZIP_MARK = [0x50, 0x4b] as const;

async function importFile(record: Record, file: File): Promise<ImportState> {
  try {
    const bytes = new Uint8Array(await file.arrayBuffer());
    const zipped = ZIP_MARK.every((mark, index) => bytes[index] === mark) ? unpackZip(bytes) : null;
    if (zipped && !zipped.ok) return { kind: 'refused', sentence: zipped.sentence };
    const parsed = parseExport(zipped ? zipped.text : new TextDecoder().decode(bytes));
    if (!parsed.ok) return { kind: 'refused', sentence: parsed.sentence };
    const report = await record.importDataset(parsed.data);
    for (const { kind, id, type, bytes: content } of zipped?.media ?? []) {
      const copy = content.slice().buffer;
      if (kind === 'clip') await record.putClip(id, copy, type);
      else await record.putPhoto(id, copy, type);
    }
    const { units, rounds, entries, events } = report;
    return { kind: 'done', units, rounds, entries, events, warnings: [...parsed.warnings, ...(zipped?.warnings ?? [])] };
  } catch (error) {
    return {
      kind: 'refused',
      sentence: error instanceof RecordError ? error.sentence : 'The file could not be read. Choose it again, or another one.',
    };
  }
}
