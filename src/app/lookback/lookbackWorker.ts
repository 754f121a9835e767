/** Reads and works through a unit's past beside the page, which stays free for the person. */
import { openRecord } from '../../record/openRecord.ts';
import { RecordError } from '../../record/recordError.ts';
import { createUnitCache, type Question, type UnitCache } from './unitCache.ts';
import type { UnitSummary, UnitTrends } from './unitSummary.ts';

/** What may be asked, and what is answered to it. */
export interface Answers {
  readonly trends: UnitTrends | null;
  readonly summary: UnitSummary | null;
}

export interface Asked {
  readonly turn: number;
  readonly databaseName: string;
  readonly about: keyof Answers;
  readonly question: Question;
}

export type Answered =
  | { readonly turn: number; readonly answer: Answers[keyof Answers] }
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
  cache ??= openRecord({ name, onBlocking: forget, onBlocked: forget, onTerminated: forget }).then((record) =>
    createUnitCache(record),
  );
  cache.catch(forget);
  return cache;
}

async function answer({ turn, databaseName, about, question }: Asked): Promise<Answered> {
  try {
    return { turn, answer: await (await opened(databaseName))[about](question) };
  } catch (error) {
    return { turn, sentence: error instanceof RecordError ? error.sentence : 'The earlier rounds could not be read. Try again.' };
  }
}

// One after another: two questions about the same unit read it once.
let queue: Promise<unknown> = Promise.resolve();
realm.onmessage = ({ data }) => {
  queue = queue.then(async () => realm.postMessage(await answer(data)));
};
