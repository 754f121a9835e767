/** What stays on the device and how it gets off it: backup, export, import, and what is used of the room. */
import { useId, useRef } from 'react';
import type { BackupState } from '../../domain/files/backup.ts';
import { HoldButton } from '../parts/HoldButton.tsx';
import { Time } from './Time.tsx';

export interface StorageView {
  readonly usedBytes: number | null;
  readonly quotaBytes: number | null;
  /** Whether the browser has promised not to clear it by itself. */
  readonly persisted: boolean;
  readonly units: number;
  readonly rounds: number;
  readonly clips: number;
  readonly clipBytes: number;
  readonly photos: number;
}

export type ImportState =
  | { readonly kind: 'none' }
  | { readonly kind: 'reading' }
  /** `sentence` says what to do. */
  | { readonly kind: 'refused'; readonly sentence: string }
  | {
      readonly kind: 'done';
      readonly units: number;
      readonly rounds: number;
      readonly entries: number;
      readonly events: number;
      readonly warnings: readonly string[];
    };

export interface FilesPageProps {
  readonly backup: BackupState;
  readonly storage: StorageView;
  readonly importing: ImportState;
  /** What an export is doing or why it failed; null at rest. */
  readonly busy: string | null;
  readonly onExport: (what: 'record' | 'record-with-media' | 'csv' | 'reminders') => void;
  /** Null where the device has no share sheet for files. */
  readonly onShare: (() => void) | null;
  readonly onImport: (file: File) => void;
  readonly onPersist: () => void;
  readonly onDropClips: () => void;
}

export function FilesPage(props: FilesPageProps) {
  const { storage, importing, busy, onExport, onShare, onImport, onPersist, onDropClips } = props;
  const inputId = useId();
  const input = useRef<HTMLInputElement>(null);
  const { lastAt, roundsSince, isDue } = props.backup;
  return (
    <main className="page look-page">
      <header>
        <h1>Files</h1>
        <p>Everything stays on this device. Nothing is sent anywhere unless you save or share it here.</p>
      </header>

      <section aria-labelledby="look-backup">
        <h2 id="look-backup">Backup</h2>
        <p className={isDue ? 'look-backup-due' : undefined}>
          {lastAt === null ? (
            'Never saved elsewhere.'
          ) : (
            <>
              Last saved elsewhere on <Time at={lastAt} />.
            </>
          )}{' '}
          {roundsSince === 0
            ? 'No round since then.'
            : `${roundsSince} ${roundsSince === 1 ? 'round' : 'rounds'} would be lost with this device.`}
        </p>
        {isDue && <p>Save a backup now, and keep it somewhere else.</p>}
        <p className="look-actions">
          <button type="button" className="slab main" onClick={() => onExport('record-with-media')}>
            Save everything, clips and pictures too
          </button>
          <button type="button" className="slab" onClick={() => onExport('record')}>
            Save the record alone
          </button>
          {onShare && (
            <button type="button" className="slab" onClick={onShare}>
              Share
            </button>
          )}
        </p>
        <p role="status">{busy}</p>
      </section>

      <section aria-labelledby="look-import">
        <h2 id="look-import">Import</h2>
        <p>
          Takes a file that this app saved, here or elsewhere. What is here already is not doubled, and nothing is overwritten.
        </p>
        <label className="unseen" htmlFor={inputId}>
          File to import
        </label>
        <input
          ref={input}
          id={inputId}
          className="look-file"
          type="file"
          accept=".json,.zip,application/json,application/zip"
          disabled={importing.kind === 'reading'}
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            if (file) onImport(file);
            // The same file may be chosen again after it was mended.
            event.currentTarget.value = '';
          }}
        />
        <ImportOutcome importing={importing} />
      </section>

      <section aria-labelledby="look-tables">
        <h2 id="look-tables">For other programs</h2>
        <p className="look-actions">
          <button type="button" className="slab" onClick={() => onExport('csv')}>
            Readings as a table (CSV)
          </button>
          <button type="button" className="slab" onClick={() => onExport('reminders')}>
            Due dates for a calendar
          </button>
        </p>
      </section>

      <section aria-labelledby="look-room">
        <h2 id="look-room">Room</h2>
        <dl className="look-room">
          <div>
            <dt>Used</dt>
            <dd>
              {storage.usedBytes === null ? 'not known' : bytesText(storage.usedBytes)}
              {storage.usedBytes !== null && storage.quotaBytes !== null && storage.quotaBytes > 0 && (
                <>
                  {' '}
                  of {bytesText(storage.quotaBytes)}
                  <meter min={0} max={storage.quotaBytes} value={storage.usedBytes} aria-label="Room used" />
                </>
              )}
            </dd>
          </div>
          <div>
            <dt>Kept</dt>
            <dd>
              {storage.units} units, {storage.rounds} rounds, {storage.photos} pictures, {storage.clips} clips (
              {bytesText(storage.clipBytes)})
            </dd>
          </div>
          <div>
            <dt>Promised by the browser</dt>
            <dd>{storage.persisted ? 'It does not clear this by itself.' : 'It may clear this when room gets short.'}</dd>
          </div>
        </dl>
        <div className="look-actions">
          {!storage.persisted && (
            <button type="button" className="slab" onClick={onPersist}>
              Ask the browser to keep it
            </button>
          )}
          {storage.clips > 0 && (
            <HoldButton label="Delete the clips" onHeld={onDropClips}>
              Delete the clips
            </HoldButton>
          )}
        </div>
      </section>
    </main>
  );
}

function ImportOutcome({ importing }: { readonly importing: ImportState }) {
  switch (importing.kind) {
    case 'none':
      return null;
    case 'reading':
      return <p role="status">Reading the file…</p>;
    case 'refused':
      return <p role="alert">{importing.sentence}</p>;
    case 'done':
      return (
        <div role="status">
          <p>
            {importing.units + importing.rounds + importing.entries + importing.events === 0
              ? 'Everything in it was here already.'
              : `Taken over: ${importing.units} units, ${importing.rounds} rounds, ${importing.entries} entries, ${importing.events} events.`}
          </p>
          {importing.warnings.map((warning) => (
            <p key={warning}>{warning}</p>
          ))}
        </div>
      );
  }
}

/** "1.2 MB": powers of a thousand, as devices are sold. */
export function bytesText(bytes: number): string {
  const units = ['bytes', 'kB', 'MB', 'GB', 'TB'];
  let value = bytes;
  let index = 0;
  while (value >= 1000 && index < units.length - 1) {
    value /= 1000;
    index++;
  }
  return `${index === 0 || value >= 100 ? Math.round(value) : value.toFixed(1)} ${units[index]}`;
}
