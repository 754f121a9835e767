/** What stays on the device and how it gets off it: backup, export, import, and what is used of the room. */

import { useEffect, useId, useRef } from 'react';
import type { BackupState } from '../../domain/files/backup.ts';
import { canStop, type FileProgress, STEP_SENTENCES } from '../../domain/files/progress.ts';
import type { TakenFile } from '../../domain/files/takenFile.ts';
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

export type ExportState =
  | { readonly kind: 'none' }
  | { readonly kind: 'working'; readonly progress: FileProgress }
  /** Why there is no file, or what to do for it. */
  | { readonly kind: 'told'; readonly sentence: string };

export type ImportState =
  | { readonly kind: 'none' }
  | { readonly kind: 'working'; readonly progress: FileProgress }
  | { readonly kind: 'stopped' }
  | TakenFile;

export interface FilesPageProps {
  readonly backup: BackupState;
  readonly storage: StorageView;
  readonly exporting: ExportState;
  readonly importing: ImportState;
  readonly onExport: (what: 'record' | 'record-with-media' | 'csv' | 'reminders') => void;
  /** Null where the device has no share sheet for files. */
  readonly onShare: (() => void) | null;
  readonly onImport: (file: File) => void;
  /** What is in work is not wanted after all; offered as long as nothing was written. */
  readonly onStop: () => void;
  readonly onPersist: () => void;
  readonly onDropClips: () => void;
}

export function FilesPage(props: FilesPageProps) {
  const { storage, exporting, importing, onExport, onShare, onImport, onStop, onPersist, onDropClips } = props;
  const inputId = useId();
  const input = useRef<HTMLInputElement>(null);
  const { lastAt, roundsSince, isDue } = props.backup;
  const work = exporting.kind === 'working' ? 'backup' : importing.kind === 'working' ? 'import' : null;
  // One file at a time; the rest of the app goes on.
  const busy = work !== null;
  const headings = { backup: useRef<HTMLHeadingElement>(null), import: useRef<HTMLHeadingElement>(null) };
  const before = useRef<'backup' | 'import' | null>(null);
  useEffect(() => {
    const ended = before.current;
    before.current = work;
    // The button to stop went while it was in hand: whoever uses the keyboard goes on from the same section.
    if (work === null && ended !== null && document.activeElement === document.body) headings[ended].current?.focus();
  });
  return (
    <main className="page look-page">
      <header>
        <h1>Files</h1>
        <p>Everything stays on this device. Nothing is sent anywhere unless you save or share it here.</p>
      </header>

      <section aria-labelledby="look-backup">
        <h2 id="look-backup" ref={headings.backup} tabIndex={-1}>
          Backup
        </h2>
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
          <button type="button" className="slab main" aria-disabled={busy} onClick={() => onExport('record-with-media')}>
            Save everything, clips and pictures too
          </button>
          <button type="button" className="slab" aria-disabled={busy} onClick={() => onExport('record')}>
            Save the record alone
          </button>
          {onShare && (
            <button type="button" className="slab" aria-disabled={busy} onClick={onShare}>
              Share
            </button>
          )}
        </p>
        <p role="status">
          {exporting.kind === 'working'
            ? STEP_SENTENCES[exporting.progress.step]
            : exporting.kind === 'told' && exporting.sentence}
        </p>
        {exporting.kind === 'working' && <HowFar progress={exporting.progress} onStop={onStop} />}
      </section>

      <section aria-labelledby="look-import">
        <h2 id="look-import" ref={headings.import} tabIndex={-1}>
          Import
        </h2>
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
          disabled={busy}
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            if (file) onImport(file);
            // The same file may be chosen again after it was mended.
            event.currentTarget.value = '';
          }}
        />
        <ImportOutcome importing={importing} />
        {importing.kind === 'working' && <HowFar progress={importing.progress} onStop={onStop} />}
      </section>

      <section aria-labelledby="look-tables">
        <h2 id="look-tables">For other programs</h2>
        <p className="look-actions">
          <button type="button" className="slab" aria-disabled={busy} onClick={() => onExport('csv')}>
            Readings as a table (CSV)
          </button>
          <button type="button" className="slab" aria-disabled={busy} onClick={() => onExport('reminders')}>
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

/** A bar and a way to stop, beside the sentence that is read out. */
function HowFar({ progress, onStop }: { readonly progress: FileProgress; readonly onStop: () => void }) {
  const { step, done, of } = progress;
  return (
    <div className="look-how-far">
      <progress aria-label={STEP_SENTENCES[step]} {...(of === null ? {} : { value: done, max: Math.max(1, of) })} />
      {canStop(progress) && (
        <button type="button" className="slab" onClick={onStop}>
          Stop
        </button>
      )}
    </div>
  );
}

/** One live region all the time: a region that comes with its words is often not read out. */
function ImportOutcome({ importing }: { readonly importing: ImportState }) {
  if (importing.kind === 'refused') return <p role="alert">{importing.sentence}</p>;
  return (
    <div role="status">
      {importing.kind === 'working' && <p>{STEP_SENTENCES[importing.progress.step]}</p>}
      {importing.kind === 'stopped' && <p>Stopped. Nothing was taken from the file.</p>}
      {importing.kind === 'done' && (
        <>
          <p>
            {importing.units + importing.rounds + importing.entries + importing.events === 0
              ? 'Everything in it was here already.'
              : `Taken over: ${importing.units} units, ${importing.rounds} rounds, ${importing.entries} entries, ${importing.events} events.`}
          </p>
          {importing.warnings.map((warning) => (
            <p key={warning}>{warning}</p>
          ))}
        </>
      )}
    </div>
  );
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
