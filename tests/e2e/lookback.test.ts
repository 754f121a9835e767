/** Looking back on the production build: the past worked through in a Worker, paper, the backup that is asked for. */
import { readFileSync } from 'node:fs';
import type { BrowserContext, Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, inject, it } from 'vitest';
import { generateHistory } from '../../src/domain/demo/generate.ts';
import { exportAll } from '../../src/domain/files/exportAll.ts';
import { parseExport } from '../../src/domain/files/parseExport.ts';
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

  it('says what is wrong with a file in the words of the record', async () => {
    const [template] = TEMPLATES;
    if (!template) throw new Error('there is a template');
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
