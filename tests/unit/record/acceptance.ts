/**
 * What any implementation of the record must do. Run on the memory implementation, on fake-indexeddb here, and on a
 * real browser's IndexedDB in the browser tests.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Dataset, EMPTY_DATASET } from '../../../src/domain/files/dataset.ts';
import type { Record } from '../../../src/record/record.ts';
import { answered, begun, bytes, completed, givenRound, givenUnit, mended, noted } from './given.ts';

export function acceptRecord(name: string, open: () => Promise<Record>): void {
  const withRound = async (entries = 1): Promise<Record> => {
    const record = await open();
    await record.beginRound(givenRound(), begun());
    for (let seq = 1; seq < entries; seq++) await record.append(answered('round-1', seq, 50 + seq));
    return record;
  };

  describe(`${name}: units`, () => {
    it('keeps every revision and lists the latest of each by name', async () => {
      const record = await open();
      await record.putUnit(givenUnit());
      await record.putUnit(givenUnit({ revision: 2, name: 'Heron two' }));
      await record.putUnit(givenUnit({ id: 'lantern', name: 'Alder' }));
      expect((await record.units()).map(({ name, revision }) => [name, revision])).toEqual([
        ['Alder', 1],
        ['Heron two', 2],
      ]);
      expect(await record.unitRevisions('heron')).toEqual([givenUnit(), givenUnit({ revision: 2, name: 'Heron two' })]);
    });

    it('takes the same revision twice when it is the same, and refuses another or an older one', async () => {
      const record = await open();
      await record.putUnit(givenUnit({ revision: 3 }));
      await record.putUnit(givenUnit({ revision: 3 }));
      await expect(record.putUnit(givenUnit({ revision: 3, name: 'Other' }))).rejects.toMatchObject({ trouble: 'clash' });
      await expect(record.putUnit(givenUnit({ revision: 2 }))).rejects.toMatchObject({ trouble: 'clash' });
      expect(await record.unitRevisions('heron')).toHaveLength(1);
    });

    it('does not mix up units whose ids begin alike', async () => {
      const record = await open();
      await record.putUnit(givenUnit({ id: 'heron' }));
      await record.putUnit(givenUnit({ id: 'heron2' }));
      expect((await record.unitRevisions('heron')).map(({ id }) => id)).toEqual(['heron']);
    });
  });

  describe(`${name}: rounds`, () => {
    it('gives back the round and its entries as they were written', async () => {
      const record = await withRound(3);
      expect(await record.round('round-1')).toEqual({
        round: givenRound(),
        entries: [begun(), answered('round-1', 1, 51), answered('round-1', 2, 52)],
      });
    });

    it('lists headers newest first and the unfinished ones apart', async () => {
      const record = await withRound(2);
      await record.beginRound(givenRound('round-2', { startedAt: givenRound().startedAt + 5 }), begun('round-2'));
      await record.append(completed('round-1', 2));
      const headers = await record.rounds();
      expect(headers.map(({ id, entries, completedAt }) => [id, entries, completedAt])).toEqual([
        ['round-2', 1, null],
        ['round-1', 3, completed('round-1', 2).at],
      ]);
      expect(headers[1]).toMatchObject({ unit: 'heron', unitName: 'Heron', kind: 'before-towing', checks: 1, demo: true });
      expect((await record.unfinishedRounds()).map(({ id }) => id)).toEqual(['round-2']);
    });

    it('takes a repeated append of the same entry and keeps it once', async () => {
      const record = await withRound(2);
      await record.append(answered('round-1', 1, 51));
      await record.append(begun());
      expect((await record.round('round-1')).entries).toHaveLength(2);
    });

    it('takes a repeated beginning, also after more was kept, and refuses another plan under its id', async () => {
      const record = await withRound(3);
      await record.beginRound(givenRound(), begun());
      await expect(record.beginRound(givenRound('round-1', { unit: 'other' }), begun())).rejects.toMatchObject({
        trouble: 'clash',
      });
      expect((await record.round('round-1')).entries).toHaveLength(3);
    });

    it.each([
      ['the same id with another content', { ...answered('round-1', 1, 99) }, 'clash'],
      ['a place that is taken', { ...answered('round-1', 1, 99), id: 'fresh' }, 'clash'],
      ['a place too far on', { ...answered('round-1', 3), id: 'fresh' }, 'gap'],
      ['a place before the first', { ...answered('round-1', -1), id: 'fresh' }, 'gap'],
      ['half a place', { ...answered('round-1', 1.5), id: 'fresh' }, 'gap'],
      ['a round that is not there', answered('round-9', 1), 'missing'],
    ])('refuses %s and leaves the round as it was', async (_, entry, trouble) => {
      const record = await withRound(2);
      await expect(record.append(entry)).rejects.toMatchObject({ name: 'RecordError', trouble });
      expect((await record.round('round-1')).entries).toEqual([begun(), answered('round-1', 1, 51)]);
    });

    it('refuses an entry whose number is not a number', async () => {
      const record = await withRound(1);
      await expect(record.append(answered('round-1', 1, Number.NaN))).rejects.toMatchObject({ trouble: 'failed' });
      expect((await record.round('round-1')).entries).toHaveLength(1);
    });

    it('refuses a beginning that is not entry 0 of the round', async () => {
      const record = await open();
      await expect(record.beginRound(givenRound(), answered('round-1', 1))).rejects.toMatchObject({ trouble: 'gap' });
      await expect(record.beginRound(givenRound(), begun('round-2'))).rejects.toMatchObject({ trouble: 'gap' });
      await expect(record.round('round-1')).rejects.toMatchObject({ trouble: 'missing' });
    });

    it('refuses an entry id that another round has', async () => {
      const record = await withRound(1);
      await expect(record.beginRound(givenRound('round-2'), { ...begun('round-2'), id: begun().id })).rejects.toMatchObject({
        trouble: 'clash',
      });
      expect(await record.rounds()).toHaveLength(1);
    });

    it('answers entries of several rounds in the order asked', async () => {
      const record = await withRound(2);
      await record.beginRound(givenRound('round-2'), begun('round-2'));
      expect(await record.entriesOf(['round-2', 'none', 'round-1'])).toEqual([
        [begun('round-2')],
        [],
        [begun(), answered('round-1', 1, 51)],
      ]);
    });

    it('of two different entries sent at once for one place keeps exactly one', async () => {
      const record = await withRound(1);
      const sent = await Promise.allSettled([
        record.append({ ...answered('round-1', 1, 60), id: 'a' }),
        record.append({ ...answered('round-1', 1, 61), id: 'b' }),
      ]);
      expect(sent.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
      expect((await record.round('round-1')).entries).toHaveLength(2);
    });

    it('law: any interleaving of appends and repeats leaves entries without gaps, each as first written', async () => {
      await fc.assert(
        fc.asyncProperty(
          fc.array(fc.record({ seq: fc.nat(6), psi: fc.integer({ min: 40, max: 42 }) }), { maxLength: 30 }),
          async (tries) => {
            const record = await withRound(1);
            const expected = [begun()];
            const results = await Promise.allSettled(tries.map(({ seq, psi }) => record.append(answered('round-1', seq, psi))));
            for (const [index, { seq, psi }] of tries.entries()) {
              const entry = answered('round-1', seq, psi);
              const isNext = seq === expected.length;
              if (isNext) expected.push(entry);
              const isKept = JSON.stringify(expected[seq]) === JSON.stringify(entry);
              expect(results[index]?.status).toBe(isKept ? 'fulfilled' : 'rejected');
            }
            const { entries } = await record.round('round-1');
            expect(entries).toEqual(expected);
            expect((await record.rounds())[0]?.entries).toBe(expected.length);
            await record.close();
          },
        ),
        { numRuns: 40, seed: 20260110 },
      );
    });
  });

  describe(`${name}: deleting`, () => {
    it('gives several rounds at once, in the order asked, and names those that are not there', async () => {
      const record = await withRound(3);
      await record.beginRound(givenRound('round-2'), begun('round-2'));
      const { rounds, torn } = await record.roundsOf(['round-2', 'none', 'round-1']);
      expect(rounds.map(({ round, entries }) => [round.id, entries.length])).toEqual([
        ['round-2', 1],
        ['round-1', 3],
      ]);
      expect(rounds[1]).toEqual(await record.round('round-1'));
      expect(torn).toEqual(['none']);
      expect(await record.roundsOf([])).toEqual({ rounds: [], torn: [] });
    });

    it('takes a round away with its clips and photos and leaves others alone', async () => {
      const record = await withRound(1);
      await record.append(answered('round-1', 1, 50, { clip: 'clip-1' }));
      await record.append(noted('round-1', 2, { clip: 'clip-2', photo: 'photo-1' }));
      await record.beginRound(givenRound('round-2'), begun('round-2'));
      for (const id of ['clip-1', 'clip-2', 'clip-3']) await record.putClip(id, bytes(1, 2), 'audio/webm');
      await record.putPhoto('photo-1', bytes(3), 'image/jpeg');
      await record.deleteRound('round-1', 77);
      await record.deleteRound('round-1', 78);
      await expect(record.round('round-1')).rejects.toMatchObject({ trouble: 'missing' });
      expect((await record.rounds()).map(({ id }) => id)).toEqual(['round-2']);
      expect(await record.clipIds()).toEqual(['clip-3']);
      expect(await record.photoIds()).toEqual([]);
      expect((await record.exportDataset()).deleted).toEqual([{ id: 'round-1', at: 77 }]);
    });

    it('lets nothing be added to a deleted round', async () => {
      const record = await withRound(1);
      await record.deleteRound('round-1', 77);
      await expect(record.append(answered('round-1', 1))).rejects.toMatchObject({ trouble: 'deleted' });
      await expect(record.beginRound(givenRound(), begun())).rejects.toMatchObject({ trouble: 'deleted' });
    });

    it('says so when there is no such round', async () => {
      await expect((await open()).deleteRound('round-9', 1)).rejects.toMatchObject({ trouble: 'missing' });
    });
  });

  describe(`${name}: events, clips, photos, settings`, () => {
    it('keeps events in order of time, once each', async () => {
      const record = await open();
      await record.appendEvent(mended('b', 'heron', 20));
      await record.appendEvent(mended('a', 'heron', 30));
      await record.appendEvent(mended('c', 'lantern', 10));
      await record.appendEvent(mended('b', 'heron', 20));
      await expect(record.appendEvent(mended('b', 'heron', 21))).rejects.toMatchObject({ trouble: 'clash' });
      expect((await record.events('heron')).map(({ id }) => id)).toEqual(['b', 'a']);
    });

    it('gives back clips and photos byte for byte with their type', async () => {
      const record = await open();
      await record.putClip('c', bytes(1, 2, 3), 'audio/webm;codecs=opus');
      await record.putClip('c', bytes(9), 'audio/mp4');
      await record.putPhoto('p', bytes(4, 5), 'image/jpeg');
      const clip = await record.clip('c');
      expect([...new Uint8Array(clip?.bytes ?? bytes())]).toEqual([1, 2, 3]);
      expect(clip?.type).toBe('audio/webm;codecs=opus');
      expect([...new Uint8Array((await record.photo('p'))?.bytes ?? bytes())]).toEqual([4, 5]);
      expect([await record.clip('none'), await record.photo('none')]).toEqual([null, null]);
    });

    it('deletes a photo for good: an old copy does not bring it back, and a merge takes it away elsewhere too', async () => {
      const [record, other] = [await open(), await open()];
      for (const each of [record, other]) await each.putPhoto('p', bytes(4, 5), 'image/jpeg');
      await record.deletePhoto('p', 50);
      await record.deletePhoto('p', 60);
      await record.putPhoto('p', bytes(4, 5), 'image/jpeg');
      expect([await record.photo('p'), await record.photoIds()]).toEqual([null, []]);
      const contents = await record.exportDataset();
      expect(contents.deleted).toEqual([{ id: 'p', at: 50 }]);
      await other.importDataset(contents);
      expect([await other.photo('p'), await other.photoIds()]).toEqual([null, []]);
    });

    it('drops the oldest clips down to the cap but never a spoken note', async () => {
      const record = await withRound(1);
      await record.append(noted('round-1', 1, { clip: 'z-note' }));
      for (const id of ['z-note', 'y-first', 'x-second', 'w-third']) await record.putClip(id, bytes(1, 2, 3, 4), 'audio/webm');
      expect(await record.clipBytesUsed()).toBe(16);
      expect(await record.dropOldestClips(9)).toBe(8);
      expect([...(await record.clipIds())].sort()).toEqual(['w-third', 'z-note']);
      expect(await record.dropOldestClips(9)).toBe(0);
      expect(await record.dropOldestClips(0)).toBe(4);
      expect(await record.clipIds()).toEqual(['z-note']);
    });

    it('remembers settings and facts about itself, and has none at first', async () => {
      const record = await open();
      expect([await record.settings(), await record.meta('saved-at')]).toEqual([null, null]);
      await record.putSettings({ rate: 1.1, display: 'us' });
      await record.putSettings({ rate: 1.2, display: 'us' });
      await record.putMeta('saved-at', 5);
      expect([await record.settings(), await record.meta('saved-at')]).toEqual([{ rate: 1.2, display: 'us' }, 5]);
    });
  });

  describe(`${name}: import and export`, () => {
    const full = async (): Promise<Record> => {
      const record = await withRound(3);
      await record.beginRound(givenRound('round-2'), begun('round-2'));
      await record.deleteRound('round-2', 5);
      await record.putUnit(givenUnit());
      await record.putUnit(givenUnit({ revision: 2 }));
      await record.appendEvent(mended('a'));
      return record;
    };
    const cut = (contents: Dataset, entries: number): Dataset => ({
      ...contents,
      entries: contents.entries.filter(({ seq }) => seq < entries),
    });

    it('what was exported can be imported elsewhere and exported again unchanged', async () => {
      const contents = await (await full()).exportDataset();
      const other = await open();
      expect(await other.importDataset(contents)).toEqual({
        units: 1,
        rounds: 1,
        entries: 3,
        events: 1,
        deleted: 1,
        conflicts: [],
      });
      expect(await other.exportDataset()).toEqual(contents);
      expect(await other.rounds()).toEqual(await (await full()).rounds());
    });

    it('importing twice adds nothing the second time', async () => {
      const record = await full();
      const contents = await record.exportDataset();
      expect(await record.importDataset(contents)).toEqual({
        units: 0,
        rounds: 0,
        entries: 0,
        events: 0,
        deleted: 0,
        conflicts: [],
      });
      expect(await record.exportDataset()).toEqual(contents);
    });

    it('continues a round that went further elsewhere, and never shortens one', async () => {
      const contents = await (await full()).exportDataset();
      const record = await open();
      await record.importDataset(cut(contents, 2));
      expect(await record.importDataset(contents)).toMatchObject({ rounds: 0, entries: 1 });
      expect(await record.importDataset(cut(contents, 1))).toMatchObject({ rounds: 0, entries: 0, conflicts: [] });
      expect(await record.exportDataset()).toEqual(contents);
      await record.append(answered('round-1', 3));
    });

    it('leaves a round alone that differs from the imported one, and says which', async () => {
      const record = await withRound(2);
      const contents = await record.exportDataset();
      const other = await open();
      await other.beginRound(givenRound(), begun());
      await other.append(answered('round-1', 1, 33));
      expect(await other.importDataset(contents)).toMatchObject({ entries: 0, conflicts: ['round round-1'] });
      expect((await other.round('round-1')).entries[1]).toEqual(answered('round-1', 1, 33));
    });

    it('a deleted round does not come back, and one deleted elsewhere goes', async () => {
      const record = await withRound(2);
      const alive = await record.exportDataset();
      await record.deleteRound('round-1', 9);
      expect(await record.importDataset(alive)).toMatchObject({ rounds: 0, entries: 0 });
      expect(await record.rounds()).toEqual([]);
      const other = await withRound(2);
      expect(await other.importDataset(await record.exportDataset())).toMatchObject({ deleted: 1 });
      expect(await other.rounds()).toEqual([]);
    });

    it('refuses an entry id that another round here has, and takes nothing', async () => {
      const record = await withRound(2);
      const before = await record.exportDataset();
      const file: Dataset = {
        ...EMPTY_DATASET,
        units: [givenUnit()],
        rounds: [givenRound('n')],
        entries: [begun('n'), { ...answered('n', 1), id: 'round-1/1' }],
      };
      await expect(record.importDataset(file)).rejects.toMatchObject({ trouble: 'clash' });
      expect(await record.exportDataset()).toEqual(before);
    });

    it('what came in by import is like what was walked here: read, gone on with, clips of notes kept, deleted', async () => {
      const source = await withRound(2);
      await source.append(noted('round-1', 2, { clip: 'z-note' }));
      const contents = await source.exportDataset();
      const record = await open();
      await record.importDataset(contents);
      expect(await record.round('round-1')).toEqual(await source.round('round-1'));
      expect(await record.entriesOf(['round-1'])).toEqual(await source.entriesOf(['round-1']));
      expect(await record.roundsOf(['round-1'])).toEqual(await source.roundsOf(['round-1']));
      // Repeats are success, other content in a taken place or under a taken id is not.
      await record.beginRound(givenRound(), begun());
      await record.append(answered('round-1', 1, 51));
      await expect(record.append({ ...answered('round-1', 1, 99), id: 'other' })).rejects.toMatchObject({ trouble: 'clash' });
      await expect(record.append({ ...answered('round-1', 3), id: 'round-1/1' })).rejects.toMatchObject({ trouble: 'clash' });
      await record.append(completed('round-1', 3));
      await source.append(completed('round-1', 3));
      expect(await record.exportDataset()).toEqual(await source.exportDataset());
      await record.putClip('z-note', bytes(1, 2), 'audio/webm');
      await record.putClip('a-answer', bytes(1, 2), 'audio/webm');
      expect(await record.dropOldestClips(0)).toBe(2);
      expect(await record.clipIds()).toEqual(['z-note']);
      // A third copy with one of its ids in another round takes nothing.
      const file: Dataset = { ...EMPTY_DATASET, rounds: [givenRound('n')], entries: [{ ...begun('n'), id: 'round-1/1' }] };
      await expect(record.importDataset(file)).rejects.toMatchObject({ trouble: 'clash' });
      await record.deleteRound('round-1', 9);
      expect(await record.exportDataset()).toMatchObject({ rounds: [], entries: [] });
      expect([await record.clipIds(), await record.entriesOf(['round-1'])]).toEqual([[], [[]]]);
      await record.importDataset(file);
      expect((await record.round('n')).entries).toHaveLength(1);
    });

    it('a unit deleted elsewhere goes with its rounds and events, and does not come back', async () => {
      const record = await full();
      const alive = await record.exportDataset();
      const report = await record.importDataset({ ...EMPTY_DATASET, deleted: [{ id: 'heron', at: 9 }] });
      expect(report).toMatchObject({ deleted: 1 });
      await record.importDataset(alive);
      expect(await record.exportDataset()).toMatchObject({ units: [], rounds: [], entries: [], events: [] });
      expect(await record.unitRevisions('heron')).toEqual([]);
    });

    it('settings are saved with the rest, and those of another device are passed over', async () => {
      const record = await open();
      await record.putSettings({ rate: 1.2 });
      const saved = await record.exportDataset();
      expect(saved.settings).toEqual({ rate: 1.2 });
      await record.importDataset({ ...saved, settings: { rate: 2 } });
      expect(await record.settings()).toEqual({ rate: 1.2 });
    });

    it.each<[string, (contents: Dataset) => Dataset]>([
      [
        'a round with a gap',
        (c) => ({ ...c, rounds: [...c.rounds, givenRound('n')], entries: [...c.entries, begun('n'), answered('n', 2)] }),
      ],
      ['a round without entries', (c) => ({ ...c, rounds: [...c.rounds, givenRound('n')] })],
      ['entries without a round', (c) => ({ ...c, entries: [...c.entries, begun('n')] })],
      [
        'one entry id in two rounds',
        (c) => ({ ...c, rounds: [...c.rounds, givenRound('n')], entries: [...c.entries, { ...begun('n'), id: begun().id }] }),
      ],
      ['the same round twice', (c) => ({ ...c, rounds: [...c.rounds, ...c.rounds] })],
      ['an event without an id', (c) => ({ ...c, events: [...c.events, JSON.parse('{"unit":"heron"}')] })],
      ['a unit without a revision', (c) => ({ ...c, units: [JSON.parse('{"id":"heron"}')] })],
      ['an entry that is not a number', (c) => ({ ...c, entries: [...c.entries, answered('round-1', 3, Number.NaN)] })],
    ])('refuses %s and takes nothing of the file', async (_, spoil) => {
      const spoiled = spoil(await (await full()).exportDataset());
      const other = await open();
      await expect(other.importDataset(spoiled)).rejects.toMatchObject({ name: 'RecordError' });
      expect(await other.exportDataset()).toEqual(EMPTY_DATASET);
    });
  });

  describe(`${name}: lifetime`, () => {
    it('lets one holder at a time run a round', async () => {
      const record = await open();
      const lock = await record.lockRound('round-1');
      expect(lock).not.toBeNull();
      expect(await record.lockRound('round-1')).toBeNull();
      expect(await record.lockRound('round-2')).not.toBeNull();
      lock?.release();
      lock?.release();
      expect(await record.lockRound('round-1')).not.toBeNull();
    });

    it('refuses to write after it was closed', async () => {
      const record = await withRound(1);
      await record.close();
      await record.close();
      await expect(record.append(answered('round-1', 1))).rejects.toMatchObject({ trouble: 'closed' });
      await expect(record.rounds()).rejects.toMatchObject({ trouble: 'closed' });
    });

    it('does not share what it holds with the caller', async () => {
      const record = await open();
      const round = structuredClone(givenRound());
      await record.beginRound(round, begun());
      (round.plan.checks as unknown[]).length = 0;
      ((await record.round('round-1')).entries as unknown[]).length = 0;
      expect((await record.round('round-1')).round.plan.checks).toHaveLength(1);
      expect((await record.round('round-1')).entries).toHaveLength(1);
    });
  });
}
