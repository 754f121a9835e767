/**
 * What is being saved or taken in. Lives as long as the page, not as the screen: whoever looks at something else meanwhile
 * finds it again, and cannot begin it twice.
 */
import { BACKUP_AT } from '../../domain/files/backup.ts';
import { remindersCalendar } from '../../domain/files/icalendar.ts';
import type { FileProgress, TellProgress } from '../../domain/files/progress.ts';
import type { TakenFile } from '../../domain/files/takenFile.ts';
import { RecordError } from '../../record/recordError.ts';
import { summaryOf } from '../lookback/lookback.ts';
import { saveFile, shareFile } from '../saveFile.ts';
import type { Services } from '../services.ts';
import { createStore } from '../store.ts';
import { type FileJob, makingJob, Sentence, Stopped, takingJob } from './fileJob.ts';
import type { MadeKind } from './fileWork.ts';

export type SavedKind = MadeKind | 'reminders';

export type Saving =
  | { readonly kind: 'none' }
  | { readonly kind: 'working'; readonly progress: FileProgress }
  | { readonly kind: 'told'; readonly sentence: string };

export type Taking =
  | { readonly kind: 'none' }
  | { readonly kind: 'working'; readonly progress: FileProgress }
  | { readonly kind: 'stopped' }
  | TakenFile;

export const saving = createStore<Saving>({ kind: 'none' });
export const taking = createStore<Taking>({ kind: 'none' });

let running: FileJob<unknown> | null = null;
/** Made for sharing, when that took longer than the browser remembers the press. */
let readyToShare: File | null = null;

export const isBusy = () => running !== null;

/** Begins to make a file and hands it to the person. Nothing while another file is in work. */
export async function save(services: Services, what: SavedKind): Promise<void> {
  await made(services, what, async (file) => {
    saveFile(file);
    return `Saved as ${file.name}.`;
  });
}

/** The record alone, through the system's share sheet. */
export async function share(services: Services): Promise<void> {
  const ready = readyToShare;
  readyToShare = null;
  const give = async (file: File) => {
    try {
      await shareFile(file);
      return 'Shared.';
    } catch (error) {
      if (!(error instanceof Error) || error.name !== 'NotAllowedError') throw error;
      readyToShare = file;
      throw new Sentence('The file is ready. Press Share once more.');
    }
  };
  if (ready === null) await made(services, 'record', give);
  else await told(services, 'record', () => give(ready));
}

/** Takes a file in. Nothing while another file is in work. */
export async function take(services: Services, file: Blob): Promise<void> {
  if (isBusy()) return;
  taking.set({ kind: 'working', progress: { step: 'opening', done: 0, of: null } });
  try {
    const job = takingJob(services.record, file, (progress) => taking.set({ kind: 'working', progress }));
    running = job;
    taking.set(await job.result);
  } catch (error) {
    taking.set(error instanceof Stopped ? { kind: 'stopped' } : { kind: 'refused', sentence: sentenceOf(error, NOT_TAKEN) });
  } finally {
    running = null;
    services.changes.update((count) => count + 1);
  }
}

/** The screen is left: what was told has been read. Work goes on. */
export function forgetTold(): void {
  if (saving.get().kind !== 'working') saving.set({ kind: 'none' });
  if (taking.get().kind !== 'working') taking.set({ kind: 'none' });
}

export function stop(): void {
  running?.stop();
}

async function made(services: Services, what: SavedKind, give: (file: File) => Promise<string>): Promise<void> {
  if (isBusy()) return;
  const tell: TellProgress = (progress) => saving.set({ kind: 'working', progress });
  tell({ step: 'reading-record', done: 0, of: null });
  await told(services, what, async () => {
    const job =
      what === 'reminders'
        ? remindersJob(services, tell)
        : makingJob(services.record, what, services.settings.get().display, tell);
    running = job;
    const blob = await job.result.finally(() => {
      running = null;
    });
    const day = new Date(services.clock.now()).toISOString().slice(0, 10);
    return give(new File([blob], `gloveside-${day}.${EXTENSIONS[what]}`, { type: blob.type }));
  });
}

/** Does the work, and tells how it ended. */
async function told({ record, clock, changes }: Services, what: SavedKind, work: () => Promise<string>): Promise<void> {
  try {
    const sentence = await work();
    if (what === 'record' || what === 'record-with-media') await record.putMeta(BACKUP_AT, clock.now());
    saving.set({ kind: 'told', sentence });
    changes.update((count) => count + 1);
  } catch (error) {
    if (error instanceof Stopped) saving.set({ kind: 'told', sentence: 'Stopped. No file was saved.' });
    // The person closed the share sheet.
    else if (error instanceof Error && error.name === 'AbortError') saving.set({ kind: 'none' });
    else saving.set({ kind: 'told', sentence: sentenceOf(error, NOT_MADE) });
  }
}

const EXTENSIONS: Readonly<Record<SavedKind, string>> = {
  record: 'json',
  'record-with-media': 'zip',
  csv: 'csv',
  reminders: 'ics',
};

const NOT_MADE = 'The file could not be made. Free some space and try again.';
const NOT_TAKEN = 'The file could not be read. Choose it again, or another one.';

function sentenceOf(error: unknown, otherwise: string): string {
  if (error instanceof RecordError) return error.sentence;
  return error instanceof Sentence ? error.message : otherwise;
}

/** Each unit's past is worked through in the Worker that looks back. */
function remindersJob({ record, settings, clock }: Services, tell: TellProgress): FileJob<Blob> {
  let stopped = false;
  const { display } = settings.get();
  const work = async () => {
    const reminders = [];
    const units = (await record.units()).filter((unit) => !unit.archived);
    for (const [done, unit] of units.entries()) {
      tell({ step: 'looking-back', done, of: units.length });
      const summary = await summaryOf(record, { unit: unit.id, display, now: clock.now() });
      if (stopped) throw new Stopped();
      reminders.push(...(summary?.due ?? []));
    }
    return new Blob([remindersCalendar(reminders, clock.now())], { type: 'text/calendar' });
  };
  return {
    result: work(),
    stop: () => {
      stopped = true;
    },
  };
}
