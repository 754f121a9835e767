/**
 * Looking back after twelve years of use, in a real browser over the production build: three units, about a thousand rounds,
 * sixty thousand readings. `npm run build && npx tsx tests/bench/lookback.ts`. Prints a table.
 *
 * A page is interactive when its data stands on the screen and the page has answered a frame and an event after that.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import type { CDPSession, Page } from 'playwright-core';
import { preview } from 'vite';
import { generateHistory } from '../../src/domain/demo/generate.ts';
import { type Dataset, EMPTY_DATASET } from '../../src/domain/files/dataset.ts';
import { exportAll } from '../../src/domain/files/exportAll.ts';
import { merge } from '../../src/domain/files/merge.ts';
import { parseExport } from '../../src/domain/files/parseExport.ts';
import { createUnit } from '../../src/domain/unit/createUnit.ts';
import { TEMPLATES } from '../../src/domain/unit/templates.ts';
import { dropProfile, freshProfile, openBrowser } from '../e2e/support/browser.ts';

const rows: (readonly [what: string, seen: string, aim: string])[] = [];
const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
const ms = (value: number) => `${Math.round(value)} ms`;
const mb = (bytes: number) => `${(bytes / 1e6).toFixed(1)} MB`;

function twelveYears(): Dataset {
  const at = Date.now() - 86_400_000;
  const units = TEMPLATES.slice(0, 3).map((template, index) => ({
    ...createUnit(template, { id: `demo-${index}`, name: `Demo ${index}`, at: 0 }),
    demo: true,
  }));
  const { rounds, events } = generateHistory({ units, years: 12, seed: 12, at });
  const entries = rounds.flatMap((record) => record.entries);
  return { schema: 1, units, rounds: rounds.map(({ round }) => round), entries, events, deleted: [] };
}

interface Opened {
  /** From the click to data on the screen and a page that answers. */
  readonly interactive: number;
  /** Until everything that is worked out behind is there too. */
  readonly complete: number;
  /** The longest time that the page could not have answered a press. */
  readonly blocked: number;
}

/** Goes to a place inside the app. */
function goTo(page: Page, hash: string, shown: string): Promise<Opened> {
  return page.evaluate(
    async ({ to, selector }) => {
      let blocked = 0;
      const tasks = new PerformanceObserver((list) => {
        for (const entry of list.getEntries()) blocked = Math.max(blocked, entry.duration);
      });
      tasks.observe({ type: 'longtask' });
      const until = (ready: () => boolean) =>
        new Promise<void>((resolve) => {
          const look = () => {
            if (!ready()) return;
            observer.disconnect();
            resolve();
          };
          const observer = new MutationObserver(look);
          observer.observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
          look();
        });
      const answered = () =>
        new Promise<void>((resolve) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(resolve, 0))));
      const start = performance.now();
      location.hash = to;
      await until(() => document.querySelector(selector) !== null);
      await answered();
      const interactive = performance.now() - start;
      await until(() => document.querySelector('[data-pending="true"], [aria-busy="true"]') === null);
      await answered();
      const complete = performance.now() - start;
      await new Promise((resolve) => setTimeout(resolve, 100));
      tasks.disconnect();
      return { interactive, complete, blocked };
    },
    { to: hash, selector: shown },
  );
}

/** Watches for times in which the page cannot answer. */
async function watchTasks(page: Page): Promise<void> {
  await page.evaluate(() => {
    const watched = { longest: 0 };
    Object.assign(globalThis, { watched });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) watched.longest = Math.max(watched.longest, entry.duration);
    }).observe({ type: 'longtask' });
  });
}

/** The longest task since it was asked last; 0 where none took 50 ms. */
async function longestTask(page: Page): Promise<number> {
  // The browser tells of a long task a moment after its end.
  await page.waitForTimeout(300);
  return page.evaluate(() => {
    const { watched } = globalThis as unknown as { watched: { longest: number } };
    const { longest } = watched;
    watched.longest = 0;
    return longest;
  });
}

async function heapOf(session: CDPSession): Promise<number> {
  await session.send('HeapProfiler.collectGarbage');
  const { usedSize } = (await session.send('Runtime.getHeapUsage')) as { usedSize: number };
  return usedSize;
}

async function measured(page: Page, name: string, hash: string, shown: string, aim: string): Promise<void> {
  const runs: Opened[] = [];
  for (let turn = 0; turn < 5; turn += 1) {
    await goTo(page, '#/settings', 'main h1, .page h1');
    runs.push(await goTo(page, hash, shown));
  }
  const [first, ...later] = runs;
  rows.push([`${name}: interactive, first time`, ms(first?.interactive ?? Number.NaN), aim]);
  rows.push([`${name}: interactive, median of ${later.length} more`, ms(median(later.map((run) => run.interactive))), aim]);
  rows.push([
    `${name}: everything worked out, first time and later`,
    `${ms(first?.complete ?? Number.NaN)}, ${ms(median(later.map((run) => run.complete)))}`,
    '',
  ]);
  rows.push([`${name}: longest the page could not answer`, ms(Math.max(...runs.map((run) => run.blocked))), '']);
}

async function main(): Promise<void> {
  const data = twelveYears();
  const text = exportAll(data);
  const server = await preview({ preview: { port: 0, host: '127.0.0.1', open: false }, logLevel: 'error' });
  const origin = `http://127.0.0.1:${(server.httpServer.address() as AddressInfo).port}/?ears=off&mouth=silent`;
  const profile = freshProfile();
  const file = join(profile, 'twelve-years.json');
  writeFileSync(file, text);
  const answers = data.entries.filter((entry) => entry.kind === 'answered').length;
  rows.push(['kept', `${data.units.length} units, ${data.rounds.length} rounds, ${answers} answers`, '']);

  let context = await openBrowser({ profile });
  let page = context.pages()[0] ?? (await context.newPage());
  await page.addInitScript('globalThis.__name = (value) => value');
  await page.goto(`${origin}#/files`);
  await page.getByLabel('File to import').waitFor();
  await watchTasks(page);
  let start = performance.now();
  await page.getByLabel('File to import').setInputFiles(file);
  await page.getByText(/Taken over:/).waitFor({ timeout: 300_000 });
  rows.push([`import of ${mb(text.length)}`, ms(performance.now() - start), '6 s']);
  rows.push(['import: longest the page could not answer', ms(await longestTask(page)), '200 ms']);

  start = performance.now();
  const saving = page.waitForEvent('download', { timeout: 120_000 });
  await page.getByRole('button', { name: 'Save the record alone' }).click();
  const saved = readFileSync(await (await saving).path(), 'utf8');
  rows.push(['export', ms(performance.now() - start), '6 s']);
  rows.push(['export: longest the page could not answer', ms(await longestTask(page)), '200 ms']);

  start = performance.now();
  const zipping = page.waitForEvent('download', { timeout: 120_000 });
  await page.getByRole('button', { name: 'Save everything' }).click();
  const zip = await (await zipping).path();
  rows.push(['export as a zip', ms(performance.now() - start), '6 s']);
  rows.push(['export as a zip: longest the page could not answer', ms(await longestTask(page)), '200 ms']);

  start = performance.now();
  await page.getByLabel('File to import').setInputFiles(zip);
  await page.getByText('Everything in it was here already.').waitFor({ timeout: 300_000 });
  rows.push(['import of the zip, all of it here already', ms(performance.now() - start), '6 s']);
  rows.push(['import of the zip: longest the page could not answer', ms(await longestTask(page)), '200 ms']);
  const again = parseExport(saved);
  // The record answers in an order of its own; a merge with nothing puts both into one.
  const isSame = again.ok && exportAll(merge(EMPTY_DATASET, again.data)) === exportAll(merge(EMPTY_DATASET, data));
  rows.push(['export, import, export', isSame ? 'identical' : 'DIFFERENT', 'identical']);
  const { usage } = await page.evaluate(() => navigator.storage.estimate());
  rows.push(['room taken on the device', mb(usage ?? Number.NaN), '']);
  await context.close();

  context = await openBrowser({ profile });
  page = context.pages()[0] ?? (await context.newPage());
  await page.addInitScript('globalThis.__name = (value) => value');
  start = performance.now();
  await page.goto(`${origin}#/unit/demo-0`);
  await page.locator('.look-rounds li').first().waitFor();
  rows.push(['unit page, the app opened at it', ms(performance.now() - start), '']);
  await page.waitForFunction(() => document.querySelector('[data-pending="true"]') === null);
  const session = await context.newCDPSession(page);
  await measured(page, 'unit page', '#/unit/demo-1', '.look-rounds li', '300 ms');
  await measured(page, 'trend page', '#/unit/demo-2/trends', '.look-page h1', '');
  await measured(page, 'home', '#/', '.home h1', '');
  const [worker] = page.workers().filter((one) => one.url().includes('lookback'));
  const timesOf = async (name: string): Promise<readonly number[]> =>
    (await worker?.evaluate((of) => performance.getEntriesByName(of).map(({ duration }) => duration), name)) ?? [];
  const total = (times: readonly number[]) => times.reduce((sum, time) => sum + time, 0);
  for (const unit of data.units) await goTo(page, `#/unit/${unit.id}/trends`, '.look-page h1');
  const first = await timesOf('lookback trends');
  rows.push([`in the Worker: trends of all ${first.length} units, first time`, ms(total(first)), '100 ms']);
  // In the other units of measure everything is worked out anew, and nothing is read.
  await goTo(page, '#/settings', 'h1');
  await page.getByRole('radio', { name: /kPa/ }).check();
  for (const unit of data.units) await goTo(page, `#/unit/${unit.id}/trends`, '.look-page h1');
  const anew = (await timesOf('lookback trends')).slice(first.length);
  rows.push([`in the Worker: trends of all ${anew.length} units, worked out anew`, ms(total(anew)), '100 ms']);
  for (const unit of data.units) await goTo(page, `#/unit/${unit.id}/trends`, '.look-page h1');
  rows.push([
    'in the Worker: trends worked out when nothing was added',
    String((await timesOf('lookback trends')).length - 2 * anew.length),
    '0',
  ]);
  const summaries = await timesOf('lookback summary');
  rows.push([
    'in the Worker: findings, what is due and verdicts of one unit, first time and later',
    `${ms(summaries[0] ?? Number.NaN)}, ${ms(median(summaries.slice(2)))}`,
    '',
  ]);
  const inWorker = await worker?.evaluate(
    () => (performance as unknown as { memory?: { usedJSHeapSize: number } }).memory?.usedJSHeapSize ?? null,
  );
  if (inWorker) rows.push(['in the Worker: heap', mb(inWorker), '']);
  rows.push(['heap of the page, after all of it', mb(await heapOf(session)), '']);
  await context.close();
  dropProfile(profile);
  await new Promise<void>((resolve) => server.httpServer.close(() => resolve()));

  const width = Math.max(...rows.map(([what]) => what.length));
  for (const [what, seen, aim] of rows)
    console.log(`${what.padEnd(width)}  ${seen.padStart(12)}${aim === '' ? '' : `  aim ${aim}`}`);
  if (rows.some(([, seen]) => seen === 'DIFFERENT')) process.exitCode = 1;
}

await main();
