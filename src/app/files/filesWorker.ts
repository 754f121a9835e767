/** Makes one file of the record, or takes one in, beside the page; then it is ended. */
import type { FileProgress } from '../../domain/files/progress.ts';
import type { TakenFile } from '../../domain/files/takenFile.ts';
import type { Display } from '../../domain/voice/settings.ts';
import { openRecord } from '../../record/openRecord.ts';
import { RecordError } from '../../record/recordError.ts';
import { type MadeKind, makeFile, takeFile } from './fileWork.ts';

export type FileOrder =
  | { readonly order: 'make'; readonly databaseName: string; readonly what: MadeKind; readonly display: Display }
  | { readonly order: 'take'; readonly databaseName: string; readonly file: Blob }
  /** The answer to `may-add`. Whoever stops the work does not send it, and can be sure that nothing was written. */
  | { readonly order: 'add' };

export type FileNews =
  | { readonly news: 'progress'; readonly progress: FileProgress }
  | { readonly news: 'may-add' }
  | { readonly news: 'made'; readonly blob: Blob }
  | { readonly news: 'taken'; readonly taken: TakenFile }
  | { readonly news: 'failed'; readonly sentence: string };

/** The page's types know `self` as a window; only this much of a Worker's own is used. */
interface Realm {
  onmessage: ((event: MessageEvent<FileOrder>) => void) | null;
  postMessage(news: FileNews): void;
}
const realm = self as unknown as Realm;

const tell = (progress: FileProgress) => realm.postMessage({ news: 'progress', progress });
let add: () => void = () => undefined;

realm.onmessage = ({ data }) => {
  if (data.order === 'add') add();
  else void work(data);
};

async function work(order: Exclude<FileOrder, { order: 'add' }>): Promise<void> {
  try {
    const none = () => undefined;
    const record = await openRecord({ name: order.databaseName, onBlocking: none, onBlocked: none, onTerminated: none });
    if (order.order === 'make') {
      realm.postMessage({ news: 'made', blob: await makeFile(record, order.what, order.display, tell) });
    } else {
      const mayAdd = () =>
        new Promise<void>((resolve) => {
          add = resolve;
          realm.postMessage({ news: 'may-add' });
        });
      realm.postMessage({ news: 'taken', taken: await takeFile(record, order.file, tell, mayAdd) });
    }
  } catch (error) {
    const fallback =
      order.order === 'make'
        ? 'The file could not be made. Free some space and try again.'
        : 'The file could not be read. Choose it again, or another one.';
    realm.postMessage({ news: 'failed', sentence: error instanceof RecordError ? error.sentence : fallback });
  }
}
