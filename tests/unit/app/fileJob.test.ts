import { afterEach, describe, expect, it, vi } from 'vitest';
import { makingJob, Sentence, Stopped, takingJob } from '../../../src/app/files/fileJob.ts';
import type { FileNews, FileOrder } from '../../../src/app/files/filesWorker.ts';
import { takeFile } from '../../../src/app/files/fileWork.ts';
import { EMPTY_DATASET } from '../../../src/domain/files/dataset.ts';
import { exportAll } from '../../../src/domain/files/exportAll.ts';
import { canStop, type FileProgress } from '../../../src/domain/files/progress.ts';
import { packZip } from '../../../src/domain/files/zip.ts';
import { createMemoryRecord } from '../../../src/record/memoryRecord.ts';
import { demoDataset } from '../files/givenDataset.ts';

/** A Worker that does what the test says. */
class GivenWorker {
  static last: GivenWorker;
  readonly orders: FileOrder[] = [];
  ended = false;
  onmessage: ((event: { data: FileNews }) => void) | null = null;
  onerror: ((event: { preventDefault(): void }) => void) | null = null;
  constructor() {
    GivenWorker.last = this;
  }
  postMessage(order: FileOrder) {
    this.orders.push(order);
  }
  terminate() {
    this.ended = true;
  }
  says(news: FileNews) {
    if (!this.ended) this.onmessage?.({ data: news });
  }
}

afterEach(() => vi.unstubAllGlobals());

const data = demoDataset(0.1);
const file = new Blob([exportAll(data)]);

function given() {
  vi.stubGlobal('Worker', GivenWorker);
  const record = { ...createMemoryRecord(), databaseName: 'given' };
  const told: FileProgress[] = [];
  return { record, told, tell: (progress: FileProgress) => told.push(progress) };
}

describe('a file in a Worker', () => {
  it('is made there, and the Worker is ended', async () => {
    const { record, told, tell } = given();
    const job = makingJob(record, 'record', 'us', tell);
    const worker = GivenWorker.last;
    expect(worker.orders).toEqual([{ order: 'make', databaseName: 'given', what: 'record', display: 'us' }]);
    const progress = { step: 'writing', done: 0, of: null } as const;
    worker.says({ news: 'progress', progress });
    const blob = new Blob(['{}']);
    worker.says({ news: 'made', blob });
    expect(await job.result).toBe(blob);
    expect([told, worker.ended]).toEqual([[progress], true]);
  });

  it('stopped before it may add is never told to, and takes nothing', async () => {
    const { record, tell } = given();
    const job = takingJob(record, file, tell);
    const worker = GivenWorker.last;
    worker.says({ news: 'progress', progress: { step: 'checking', done: 0, of: null } });
    job.stop();
    worker.says({ news: 'may-add' });
    await expect(job.result).rejects.toBeInstanceOf(Stopped);
    expect([worker.ended, worker.orders.length]).toEqual([true, 1]);
  });

  it('is no longer stopped once it adds', async () => {
    const { record, told, tell } = given();
    const job = takingJob(record, file, tell);
    const worker = GivenWorker.last;
    worker.says({ news: 'may-add' });
    expect(worker.orders.at(-1)).toEqual({ order: 'add' });
    expect(told.map(canStop)).toEqual([false]);
    job.stop();
    expect(worker.ended).toBe(false);
    const taken = { kind: 'done', units: 1, rounds: 1, entries: 1, events: 1, warnings: [] } as const;
    worker.says({ news: 'taken', taken });
    expect(await job.result).toEqual(taken);
  });

  it('that has failed with a sentence says that sentence', async () => {
    const { record, tell } = given();
    const job = makingJob(record, 'record', 'us', tell);
    GivenWorker.last.says({ news: 'failed', sentence: 'There is no room left.' });
    await expect(job.result).rejects.toEqual(new Sentence('There is no room left.'));
  });

  it('that cannot start is made and taken in in the page', async () => {
    const { record, tell } = given();
    const taking = takingJob(record, file, tell);
    GivenWorker.last.onerror?.({ preventDefault: () => undefined });
    expect(await taking.result).toMatchObject({ kind: 'done', rounds: data.rounds.length });
    const making = makingJob(record, 'record', 'us', tell);
    GivenWorker.last.onerror?.({ preventDefault: () => undefined });
    expect(JSON.parse(await (await making.result).text()).rounds).toHaveLength(data.rounds.length);
  });
});

describe('a file in the page', () => {
  it('is stopped between two steps, and nothing was taken', async () => {
    const record = createMemoryRecord();
    const job = takingJob(record, file, ({ step }) => step === 'opening' && job.stop());
    await expect(job.result).rejects.toBeInstanceOf(Stopped);
    expect(await record.exportDataset()).toEqual(EMPTY_DATASET);
  });

  it('with clips and pictures comes back whole', async () => {
    const record = createMemoryRecord();
    await record.importDataset(data);
    await record.putPhoto('p', new Uint8Array([1, 2]).buffer, 'image/jpeg');
    await record.putClip('c', new Uint8Array([3]).buffer, 'audio/webm');
    const steps: FileProgress[] = [];
    const zip = await makingJob(record, 'record-with-media', 'us', (progress) => steps.push(progress)).result;
    expect(steps.map(({ step, done, of }) => [step, done, of])).toEqual([
      ['reading-record', 0, null],
      ['writing', 0, null],
      ['gathering-media', 0, 2],
      ['gathering-media', 1, 2],
      ['packing', 0, null],
    ]);
    const other = createMemoryRecord();
    expect(await takingJob(other, zip, () => undefined).result).toMatchObject({ kind: 'done', rounds: data.rounds.length });
    expect(await other.exportDataset()).toEqual(await record.exportDataset());
    expect([...new Uint8Array((await other.photo('p'))?.bytes ?? new ArrayBuffer())]).toEqual([1, 2]);
    expect((await other.clip('c'))?.type).toBe('audio/webm');
  });

  it('says what differs here and there, and refuses what it cannot read', async () => {
    const record = createMemoryRecord();
    await record.importDataset(data);
    const entries = data.entries.map((entry) => (entry.kind === 'begun' ? { ...entry, at: entry.at + 1 } : entry));
    const taken = await takeFile(
      record,
      new Blob([exportAll({ ...data, entries })]),
      () => undefined,
      async () => undefined,
    );
    expect(taken).toMatchObject({ kind: 'done', entries: 0 });
    expect(taken.kind === 'done' && taken.warnings[0]).toMatch(/things differ here and in the file: what is here was left/);
    const damaged = new Blob([(packZip('{}', []) as Uint8Array<ArrayBuffer>).slice(0, 20)]);
    expect(await takingJob(record, damaged, () => undefined).result).toMatchObject({
      kind: 'refused',
      sentence: expect.stringContaining('damaged'),
    });
    const gone = { arrayBuffer: () => Promise.reject(new Error('gone')) } as unknown as Blob;
    expect(await takingJob(record, gone, () => undefined).result).toMatchObject({ kind: 'refused' });
  });
});
