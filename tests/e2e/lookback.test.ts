/** Looking back on the production build: the past worked through in a Worker, paper, the backup that is asked for. */
import { readFileSync } from 'node:fs';
import type { BrowserContext, Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, inject, it } from 'vitest';
import { generateHistory } from '../../src/domain/demo/generate.ts';
import { EMPTY_DATASET } from '../../src/domain/files/dataset.ts';
import { exportAll } from '../../src/domain/files/exportAll.ts';
import { merge } from '../../src/domain/files/merge.ts';
import { parseExport } from '../../src/domain/files/parseExport.ts';
import { unpackZip } from '../../src/domain/files/zip.ts';
import { createUnit } from '../../src/domain/unit/createUnit.ts';
import { TEMPLATES } from '../../src/domain/unit/templates.ts';
import { dropProfile, freshProfile, openBrowser, openPage } from './support/browser.ts';
import { openWithDemo } from './support/person.ts';

const origin = inject('origin');
const QUIET = '?ears=off&mouth=silent';
const MARGIN = { top: '8mm', bottom: '8mm', left: '8mm', right: '8mm' };

/** A year of one unit that is not demo data. */
function realYear() {
  const [template] = TEMPLATES;
  if (!template) throw new Error('there is a template');
  const unit = { ...createUnit(template, { id: 'plover', name: 'Plover', at: 0 }), demo: true };
  const { rounds, events } = generateHistory({ units: [unit], years: 1, seed: 7, at: Date.now() - 86_400_000 });
  return exportAll({
    schema: 1,
    units: [{ ...unit, demo: false }],
    rounds: rounds.map(({ round }) => ({
      ...round,
      demo: false,
      plan: { ...round.plan, demo: false, unit: { ...round.plan.unit, demo: false } },
    })),
    entries: rounds.flatMap(({ entries }) => entries),
    events,
    deleted: [],
  });
}

const importText = (page: Page, text: string) =>
  page.getByLabel('File to import').setInputFiles({ name: 'year.json', mimeType: 'application/json', buffer: Buffer.from(text) });

/** @returns where the file was saved to */
async function saved(page: Page, button: string): Promise<string> {
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: button }).click();
  const path = await (await saving).path();
  await page.getByText(/^Saved as gloveside-/).waitFor();
  return path;
}

/** The same order for both, and without the settings, which belong to a device. */
function stripped(text: string): string {
  const parsed = parseExport(text);
  if (!parsed.ok) throw new Error(parsed.sentence);
  const { settings: _, ...data } = merge(EMPTY_DATASET, parsed.data);
  return exportAll(data);
}

/** Everything that the live regions of the page ever said. */
async function watchStatus(page: Page): Promise<void> {
  await page.evaluate(() => {
    const told: string[] = [];
    Object.assign(globalThis, { told });
    new MutationObserver(() => {
      for (const region of document.querySelectorAll('[role="status"]')) told.push(region.textContent ?? '');
    }).observe(document.body, { subtree: true, childList: true, characterData: true });
  });
}

describe('looking back', () => {
  let context: BrowserContext;
  let page: Page;
  let troubles: string[];
  const profile = { path: '' };

  beforeEach(async () => {
    profile.path = freshProfile();
    context = await openBrowser({ profile: profile.path });
    ({ page, troubles } = await openPage(context, origin));
  });
  afterEach(async () => {
    await context.close();
    dropProfile(profile.path);
  });

  const goTo = (hash: string) =>
    page.evaluate((place) => {
      location.hash = place;
    }, hash);
  const settled = () => page.waitForFunction(() => document.querySelector('[data-pending="true"], [aria-busy="true"]') === null);

  it('works through the past in a Worker, and in the page all the same where there is none', async () => {
    await openWithDemo(page, origin, QUIET);
    await goTo('#/unit/demo-heron');
    await page.locator('.look-rounds li').first().waitFor();
    await settled();
    expect(page.workers().some((worker) => worker.url().includes('lookback'))).toBe(true);
    const seen = await page.locator('main').textContent();
    expect(seen).toMatch(/Drifting/);

    await page.addInitScript(() => {
      Object.defineProperty(window, 'Worker', { value: undefined });
    });
    await page.goto(`${origin}/${QUIET}&again#/unit/demo-heron`);
    await page.locator('.look-rounds li').first().waitFor();
    await settled();
    expect(page.workers().filter((worker) => worker.url().includes('lookback'))).toEqual([]);
    expect(await page.locator('main').textContent()).toBe(seen);
    expect(troubles).toEqual([]);
  });

  it('shows the last readings of the trends at once, and tells of a damaged round on every page that looks back', async () => {
    await openWithDemo(page, origin, QUIET);
    const other = await page.evaluate(
      () =>
        new Promise<string>((resolve, reject) => {
          const opening = indexedDB.open('gloveside');
          opening.onerror = () => reject(opening.error);
          opening.onsuccess = () => {
            const tx = opening.result.transaction(['rounds', 'plans'], 'readwrite');
            const read = tx.objectStore('rounds').getAll();
            read.onsuccess = () => {
              const [first, second] = read.result.filter((round) => round.unit === 'demo-heron');
              tx.objectStore('plans').delete(first.id);
              tx.oncomplete = () => {
                opening.result.close();
                resolve(second.id);
              };
            };
          };
        }),
    );
    const sentence = page.getByRole('alert').filter({ hasText: /^One round is damaged and left out of what is said here\./ });
    await goTo('#/unit/demo-heron/trends');
    await page.locator('.look-chart').first().waitFor();
    await sentence.waitFor();
    expect(await page.locator('[data-pending="true"]').count()).toBe(0);
    await goTo(`#/report/${other}`);
    await page.locator('.look-report').waitFor();
    await sentence.waitFor();
    await goTo('#/unit/demo-heron');
    await sentence.waitFor();
    await goTo('#/unit/demo-kestrel/trends');
    await page.locator('.look-chart').first().waitFor();
    await settled();
    expect(await sentence.count()).toBe(0);
    expect(troubles).toEqual([]);
  });

  it('prints a whole round, corrections and all, on one clean page of paper', async () => {
    await openWithDemo(page, origin, QUIET);
    const longest = await page.evaluate(
      () =>
        new Promise<{ id: string; checks: number }>((resolve, reject) => {
          const opening = indexedDB.open('gloveside');
          opening.onerror = () => reject(opening.error);
          opening.onsuccess = () => {
            const read = opening.result.transaction('rounds').objectStore('rounds').getAll();
            read.onsuccess = () => {
              opening.result.close();
              resolve(read.result.sort((a, b) => b.checks - a.checks)[0]);
            };
          };
        }),
    );
    expect(longest.checks).toBeGreaterThan(60);
    await goTo(`#/round/${longest.id}`);
    await page.locator('.look-timeline > li').first().waitFor();
    for (const format of ['Letter', 'A4']) {
      const printed = (await page.pdf({ format, margin: MARGIN })).toString('latin1');
      expect(printed.match(/\/Type\s*\/Page[^s]/g), format).toHaveLength(1);
    }
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.look-sheet-columns li').count()).toBe(longest.checks);
    expect(await page.locator('.look-timeline').isVisible()).toBe(false);
    const pressable = await page.evaluate(() =>
      [...document.querySelectorAll('button, .slab, nav, input, select, audio, .screen-only')]
        .filter((element) => element.getClientRects().length > 0)
        .map((element) => element.textContent),
    );
    expect(pressable).toEqual([]);
    expect(await page.locator('h1 .print-only').isVisible()).toBe(true);
    expect(await page.locator('h1').textContent()).toMatch(/^(Heron|Kestrel|Lantern): /);
    expect(troubles).toEqual([]);
  });

  it('asks for a backup once rounds are on this device alone, until one is saved', async () => {
    const given = realYear();
    await page.goto(`${origin}/${QUIET}#/files`);
    await page
      .getByLabel('File to import')
      .setInputFiles({ name: 'year.json', mimeType: 'application/json', buffer: Buffer.from(given) });
    await page.getByText(/Taken over:/).waitFor({ timeout: 60_000 });
    await goTo('#/');
    await page.getByText(/rounds are on this device alone/).waitFor();
    await page.getByRole('button', { name: 'Save a backup' }).click();
    await page.getByText(/would be lost with this device/).waitFor();
    const saving = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save the record alone' }).click();
    const saved = parseExport(readFileSync(await (await saving).path(), 'utf8'));
    expect(saved.ok && saved.data.rounds.length).toBeGreaterThan(3);
    await page.getByText('No round since then.').waitFor();
    await goTo('#/');
    await page.locator('.home').waitFor();
    expect(await page.getByText(/on this device alone/).count()).toBe(0);
    expect(troubles).toEqual([]);
  });

  it('saves everything and takes it in again in a Worker, identical, with what was read aloud of it', async () => {
    const given = realYear();
    await page.goto(`${origin}/${QUIET}#/files`);
    const workers: string[] = [];
    page.on('worker', (worker) => workers.push(new URL(worker.url()).pathname));
    await watchStatus(page);
    await importText(page, given);
    await page.getByText(/Taken over: 1 units, \d+ rounds/).waitFor({ timeout: 60_000 });
    const json = await saved(page, 'Save the record alone');
    expect(stripped(readFileSync(json, 'utf8'))).toBe(stripped(given));
    // A picture of some note travels in the zip.
    await page.evaluate(
      () =>
        new Promise<void>((resolve, reject) => {
          const opening = indexedDB.open('gloveside');
          opening.onerror = () => reject(opening.error);
          opening.onsuccess = () => {
            const tx = opening.result.transaction(['photos', 'photoBytes'], 'readwrite');
            tx.objectStore('photos').add({ id: 'p1', type: 'image/png', size: 3, keptAt: 1 });
            tx.objectStore('photoBytes').add({ id: 'p1', bytes: new Uint8Array([7, 8, 9]).buffer });
            tx.oncomplete = () => {
              opening.result.close();
              resolve();
            };
          };
        }),
    );
    const zip = await saved(page, 'Save everything');
    const unzipped = unpackZip(new Uint8Array(readFileSync(zip)));
    if (!unzipped.ok) throw new Error(unzipped.sentence);
    expect(unzipped.media).toEqual([{ kind: 'photo', id: 'p1', type: 'image/png', bytes: new Uint8Array([7, 8, 9]) }]);
    expect(unzipped.text).toBe(readFileSync(json, 'utf8'));

    // On another device, from the zip.
    const other = freshProfile();
    const elsewhere = await openBrowser({ profile: other });
    const opened = await openPage(elsewhere, origin);
    await opened.page.goto(`${origin}/${QUIET}#/files`);
    await opened.page.getByLabel('File to import').setInputFiles(zip);
    await opened.page.getByText(/Taken over: 1 units/).waitFor({ timeout: 60_000 });
    await opened.page.getByText(/1 pictures/).waitFor();
    const again = readFileSync(await saved(opened.page, 'Save the record alone'), 'utf8');
    await elsewhere.close();
    dropProfile(other);
    expect(again).toBe(readFileSync(json, 'utf8'));

    expect(workers.filter((path) => path.includes('filesWorker'))).toHaveLength(3);
    const told = await page.evaluate(() => (globalThis as unknown as { told: string[] }).told);
    for (const sentence of ['Checking everything in the file.', 'Reading the record on this device.', 'Packing the file.'])
      expect(told).toContain(sentence);
    expect([...troubles, ...opened.troubles]).toEqual([]);
  });

  it('refuses a torn file, a strange one and one that clashes with its sentence, and takes nothing of them', async () => {
    const given = realYear();
    await page.goto(`${origin}/${QUIET}#/files`);
    const refusedWith = async (text: string, sentence: RegExp) => {
      await importText(page, text);
      await page.getByRole('alert').filter({ hasText: sentence }).waitFor({ timeout: 60_000 });
    };
    await refusedWith(given.slice(0, given.length / 2), /damaged or is not one of ours.*Copy it again/);
    const raw = JSON.parse(given);
    raw.entries.splice(5, 1);
    await refusedWith(JSON.stringify(raw), /The file is damaged: round .* lacks entry 5\. Nothing was taken from it/);
    await refusedWith('{"hello":1}', /not one of ours/);
    await refusedWith(given.replace('"version":1', '"version":2'), /newer version of this app/);
    await goTo('#/units');
    await page.locator('h1').first().waitFor();
    expect(await page.getByText('Plover').count()).toBe(0);
    // An entry of one round under the id of another's that is here: the whole file is refused, in the words of the record.
    await goTo('#/files');
    await page.getByLabel('File to import').waitFor();
    await importText(page, given);
    await page.getByText(/Taken over:/).waitFor({ timeout: 60_000 });
    const clash = JSON.parse(given);
    const [first, second] = clash.rounds;
    clash.rounds = [{ ...second, id: 'fresh' }];
    clash.entries = [
      {
        ...clash.entries.find((entry: { round: string }) => entry.round === first.id),
        round: 'fresh',
        id: `${clash.entries[0].id}`,
      },
    ];
    await importText(page, JSON.stringify(clash));
    await page
      .getByRole('alert')
      .filter({ hasText: 'Something else is already kept in this place.' })
      .waitFor({ timeout: 60_000 });
    const json = await saved(page, 'Save the record alone');
    expect(stripped(readFileSync(json, 'utf8'))).toBe(stripped(given));
    expect(troubles).toEqual([]);
  });

  it('goes on with a file while other pages are looked at, and works without a Worker', async () => {
    await page.addInitScript(() => {
      Object.defineProperty(window, 'Worker', { value: undefined });
    });
    const given = realYear();
    await page.goto(`${origin}/${QUIET}#/files`);
    await importText(page, given);
    await goTo('#/settings');
    await page.locator('h1').first().waitFor();
    await goTo('#/units');
    await page.getByText('Plover').first().waitFor({ timeout: 60_000 });
    await goTo('#/files');
    const json = await saved(page, 'Save the record alone');
    expect(stripped(readFileSync(json, 'utf8'))).toBe(stripped(given));
    expect(page.workers()).toEqual([]);
    expect(troubles).toEqual([]);
  });

  it('says what is wrong with a file in the words of the record', async () => {
    // In the page, where the test can make the device full.
    await page.addInitScript(() => {
      Object.defineProperty(window, 'Worker', { value: undefined });
    });
    await page.goto(`${origin}/${QUIET}#/files`);
    // A record that cannot be written: the sentence of that trouble, not the browser's own message.
    await page.evaluate(() => {
      const { add } = IDBObjectStore.prototype;
      IDBObjectStore.prototype.add = function (this: IDBObjectStore, ...row: Parameters<typeof add>) {
        if (this.name === 'plans') throw new DOMException('full', 'QuotaExceededError');
        return add.apply(this, row);
      };
    });
    await page
      .getByLabel('File to import')
      .setInputFiles({ name: 'year.json', mimeType: 'application/json', buffer: Buffer.from(realYear()) });
    await page.getByText('There is no room left on this device. Nothing was kept. Free some space, then try again.').waitFor();
    await goTo('#/units');
    await page.locator('h1').first().waitFor();
    expect(await page.getByText('Plover').count()).toBe(0);
  });
});
