/** Asks for what a unit's past comes to: of the Worker where the record can be opened there, else worked out in the page. */
import type { Record } from '../../record/record.ts';
import type { Answered, Answers, Asked } from './lookbackWorker.ts';
import { createUnitCache, type Question, type UnitCache } from './unitCache.ts';
import type { UnitSummary, UnitTrends } from './unitSummary.ts';

let worker: Worker | null = null;
let turns = 0;
const waiting = new Map<number, { resolve: (answer: Answers[keyof Answers]) => void; reject: (error: Error) => void }>();
const inPage = new WeakMap<Record, UnitCache>();

/** Both: @returns null for a unit that is not in the record. Rejects with a sentence. */
export function summaryOf(record: Record, question: Question): Promise<UnitSummary | null> {
  return answerOf(record, 'summary', question);
}

export function trendsOf(record: Record, question: Question): Promise<UnitTrends | null> {
  return answerOf(record, 'trends', question);
}

async function answerOf<A extends keyof Answers>(record: Record, about: A, question: Question): Promise<Answers[A]> {
  const { databaseName } = record;
  // The cache answers each question with its own kind of answer; the compiler cannot tell which from the name.
  const inThePage = () => pageCache(record)[about](question) as Promise<Answers[A]>;
  if (databaseName === null || typeof Worker === 'undefined') return inThePage();
  try {
    return (await ask(databaseName, about, question)) as Answers[A];
  } catch (error) {
    if (error instanceof WorkerLost) return inThePage();
    throw error;
  }
}

class WorkerLost extends Error {}

function pageCache(record: Record): UnitCache {
  const cache = inPage.get(record) ?? createUnitCache(record);
  inPage.set(record, cache);
  return cache;
}

function ask(databaseName: string, about: keyof Answers, question: Question): Promise<Answers[keyof Answers]> {
  worker ??= started();
  const asked: Asked = { turn: turns++, databaseName, about, question };
  const answered = new Promise<Answers[keyof Answers]>((resolve, reject) => waiting.set(asked.turn, { resolve, reject }));
  worker.postMessage(asked);
  return answered;
}

function started(): Worker {
  const fresh = new Worker(new URL('./lookbackWorker.ts', import.meta.url), { type: 'module', name: 'lookback' });
  fresh.onmessage = ({ data }: MessageEvent<Answered>) => {
    const asked = waiting.get(data.turn);
    waiting.delete(data.turn);
    if ('sentence' in data) asked?.reject(new Error(data.sentence));
    else asked?.resolve(data.answer);
  };
  // Its file may be missing, or its memory at an end: the page does the work then, if slower.
  fresh.onerror = (event) => {
    event.preventDefault();
    worker = null;
    fresh.terminate();
    for (const { reject } of waiting.values()) reject(new WorkerLost('the Worker is gone'));
    waiting.clear();
  };
  return fresh;
}
