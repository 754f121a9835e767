/** Reads and works through a unit's past beside the page, which stays free for the person. */
import { openRecord } from '../../record/openRecord.ts';
import { RecordError } from '../../record/recordError.ts';
import { createUnitCache, type Question, type UnitCache } from './unitCache.ts';
import type { UnitSummary } from './unitSummary.ts';

export interface Asked {
  readonly turn: number;
  readonly databaseName: string;
  readonly question: Question;
}

export type Answered =
  | { readonly turn: number; readonly summary: UnitSummary | null }
  | { readonly turn: number; readonly sentence: string };

/** The page's types know `self` as a window; only this much of a Worker's own is used. */
interface Realm {
  onmessage: ((event: MessageEvent<Asked>) => void) | null;
  postMessage(answer: Answered): void;
}
const realm = self as unknown as Realm;

let cache: Promise<UnitCache> | null = null;

function opened(name: string): Promise<UnitCache> {
  // Closed for a newer version, or by the browser: opened anew for the next question.
  const forget = () => {
    cache = null;
  };
  cache ??= openRecord({ name, onBlocking: forget, onBlocked: forget, onTerminated: forget }).then(createUnitCache);
  cache.catch(forget);
  return cache;
}

async function answer({ turn, databaseName, question }: Asked): Promise<Answered> {
  try {
    return { turn, summary: await (await opened(databaseName)).summary(question) };
  } catch (error) {
    return { turn, sentence: error instanceof RecordError ? error.sentence : 'The earlier rounds could not be read. Try again.' };
  }
}

// One after another: two questions about the same unit read it once.
let queue: Promise<unknown> = Promise.resolve();
realm.onmessage = ({ data }) => {
  queue = queue.then(async () => realm.postMessage(await answer(data)));
};
