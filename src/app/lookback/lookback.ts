/** Asks for what a unit's past comes to: of the Worker where the record can be opened there, else worked out in the page. */
import type { Record } from '../../record/record.ts';
import type { Answered, Asked } from './lookbackWorker.ts';
import { createUnitCache, type Question, type UnitCache } from './unitCache.ts';
import type { UnitSummary } from './unitSummary.ts';

let worker: Worker | null = null;
let turns = 0;
const waiting = new Map<number, { resolve: (summary: UnitSummary | null) => void; reject: (error: Error) => void }>();
const inPage = new WeakMap<Record, UnitCache>();

/** @returns null for a unit that is not in the record. Rejects with a sentence. */
export async function summaryOf(record: Record, question: Question): Promise<UnitSummary | null> {
  const { databaseName } = record;
  if (databaseName === null || typeof Worker === 'undefined') return pageCache(record).summary(question);
  try {
    return await ask(databaseName, question);
  } catch (error) {
    if (error instanceof WorkerLost) return pageCache(record).summary(question);
    throw error;
  }
}

class WorkerLost extends Error {}

function pageCache(record: Record): UnitCache {
  const cache = inPage.get(record) ?? createUnitCache(record);
  inPage.set(record, cache);
  return cache;
}

function ask(databaseName: string, question: Question): Promise<UnitSummary | null> {
  worker ??= started();
  const asked: Asked = { turn: turns++, databaseName, question };
  const answered = new Promise<UnitSummary | null>((resolve, reject) => waiting.set(asked.turn, { resolve, reject }));
  worker.postMessage(asked);
  return answered;
}

function started(): Worker {
  const fresh = new Worker(new URL('./lookbackWorker.ts', import.meta.url), { type: 'module', name: 'lookback' });
  fresh.onmessage = ({ data }: MessageEvent<Answered>) => {
    const asked = waiting.get(data.turn);
    waiting.delete(data.turn);
    if ('sentence' in data) asked?.reject(new Error(data.sentence));
    else asked?.resolve(data.summary);
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
