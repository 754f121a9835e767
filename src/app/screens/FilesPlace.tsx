/** Everything out as a file, and in again; reminders, spreadsheet, storage. */
import '../../ui/lookback/lookback.css';
import { useEffect } from 'react';
import { BACKUP_AT, backupState } from '../../domain/files/backup.ts';
import type { Record } from '../../record/record.ts';
import { FilesPage } from '../../ui/lookback/FilesPage.tsx';
import { forgetTold, save, saving, share, stop, take, taking } from '../files/filesState.ts';
import { canShareFiles } from '../saveFile.ts';
import { useStore } from '../store.ts';
import { useRecordData } from '../useRecordData.ts';
import type { ScreenProps } from './screenProps.ts';

export function FilesPlace({ services }: ScreenProps) {
  const { record, clock, changes } = services;
  const view = useRecordData(services, 'files', () => storageView(record, clock.now()));
  const exporting = useStore(saving);
  const importing = useStore(taking);
  useEffect(() => forgetTold, []);
  const changed = () => changes.update((count) => count + 1);

  if (view.state !== 'ready') return <main className="page" aria-busy={view.state === 'loading'} />;
  return (
    <FilesPage
      backup={view.value.backup}
      storage={view.value.storage}
      exporting={exporting}
      importing={importing}
      onExport={(what) => void save(services, what)}
      onShare={canShareFiles() ? () => void share(services) : null}
      onImport={(file) => void take(services, file)}
      onStop={stop}
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
