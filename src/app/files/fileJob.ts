/** One file being made or taken in: in a Worker of its own, or in the page where that cannot be. */
import { canStop, type FileProgress, type TellProgress } from '../../domain/files/progress.ts';
import type { TakenFile } from '../../domain/files/takenFile.ts';
import type { Display } from '../../domain/voice/settings.ts';
import type { Record } from '../../record/record.ts';
import type { FileNews, FileOrder } from './filesWorker.ts';
import type { MadeKind } from './fileWork.ts';

export interface FileJob<T> {
  /** Rejects with {@link Stopped} or {@link Sentence}, or as the record does. */
  readonly result: Promise<T>;
  /** Only before anything is written here: see `canStop`. Then nothing was. */
  stop(): void;
}

export class Stopped extends Error {}
/** A trouble that was put into words already, for the person. */
export class Sentence extends Error {}
class WorkerLost extends Error {}

export function makingJob(record: Record, what: MadeKind, display: Display, tell: TellProgress): FileJob<Blob> {
  return job(
    record,
    (databaseName) => ({ order: 'make', databaseName, what, display }),
    (news) => (news.news === 'made' ? news.blob : null),
    async (told) => (await import('./fileWork.ts')).makeFile(record, what, display, told),
    tell,
  );
}

export function takingJob(record: Record, file: Blob, tell: TellProgress): FileJob<TakenFile> {
  return job(
    record,
    (databaseName) => ({ order: 'take', databaseName, file }),
    (news) => (news.news === 'taken' ? news.taken : null),
    async (told) => (await import('./fileWork.ts')).takeFile(record, file, told, async () => undefined),
    tell,
  );
}

function job<T>(
  record: Record,
  orderFor: (databaseName: string) => FileOrder,
  resultIn: (news: FileNews) => T | null,
  inPage: (tell: TellProgress) => Promise<T>,
  tell: TellProgress,
): FileJob<T> {
  let latest: FileProgress | null = null;
  let stopped = false;
  let end: (error: Error) => void = () => undefined;
  const told: TellProgress = (progress) => {
    // In the page this is where a wish to stop is heard: no step that writes is begun after it.
    if (stopped) throw new Stopped();
    latest = progress;
    tell(progress);
  };
  const inWorker = (databaseName: string) =>
    new Promise<T>((resolve, reject) => {
      const worker = new Worker(new URL('./filesWorker.ts', import.meta.url), { type: 'module', name: 'files' });
      end = (error) => {
        worker.terminate();
        reject(error);
      };
      worker.onmessage = ({ data }: MessageEvent<FileNews>) => {
        if (stopped) return;
        if (data.news === 'progress') return told(data.progress);
        if (data.news === 'may-add') {
          told({ step: 'adding', done: 0, of: null });
          return worker.postMessage({ order: 'add' } satisfies FileOrder);
        }
        if (data.news === 'failed') return end(new Sentence(data.sentence));
        const result = resultIn(data);
        if (result === null) return;
        worker.terminate();
        resolve(result);
      };
      // Its file may be missing, or its memory at an end: the page does the work then, if slower. Taking in twice adds once.
      worker.onerror = (event) => {
        event.preventDefault();
        end(new WorkerLost());
      };
      worker.postMessage(orderFor(databaseName));
    });
  const run = async () => {
    const { databaseName } = record;
    if (databaseName === null || typeof Worker === 'undefined') return inPage(told);
    try {
      return await inWorker(databaseName);
    } catch (error) {
      if (error instanceof WorkerLost) return inPage(told);
      throw error;
    }
  };
  return {
    result: run(),
    stop: () => {
      if (latest !== null && !canStop(latest)) return;
      stopped = true;
      end(new Stopped());
    },
  };
}
