/**
 * The round in a real browser, measured: `npm run build && npx tsx tests/bench/round.ts`. Prints a table.
 * Cold offline load to the first prompt (CPU slowed four times), end of an answer to the start of its read-back, durable
 * write, JavaScript shipped for the round, memory after a whole round.
 */
import { readdirSync, readFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { preview } from 'vite';
import { FIRST_WORDS } from '../../src/app/marks.ts';
import { dropProfile, freshProfile, openBrowser } from '../e2e/support/browser.ts';
import { answersFor, demoUnit, openWithDemo, planFor, startRoundOf, walkByVoice } from '../e2e/support/person.ts';
import { openBarePage } from './bareBrowser.ts';

const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
const rows: (readonly [what: string, seen: string, aim: string])[] = [];

/** From the address to the first words given to the mouth, as the page itself measured it. The server is gone by now. */
async function coldLoad(profile: string, origin: string, hash: string): Promise<number> {
  const page = await openBarePage(profile);
  await page.command('Emulation.setCPUThrottlingRate', { rate: 4 });
  await page.command('Page.navigate', { url: `${origin}/?ears=scripted${hash}` });
  let at: unknown;
  while (typeof at !== 'number') {
    await new Promise((resolve) => setTimeout(resolve, 500));
    at = await page.value(`performance.getEntriesByName('${FIRST_WORDS}')[0]?.startTime`);
  }
  await page.close();
  return at;
}

/** Time from the utterance's end to the change of the screen that carries its read-back, and of the writes, inside the page. */
async function answerTimes(
  page: Page,
  words: Readonly<Record<string, string>>,
  count: number,
): Promise<{ readBack: number[]; write: number[] }> {
  return page.evaluate(
    async ({ answers, times }) => {
      const run = () => document.querySelector<HTMLElement>('.run');
      const until = (ready: () => boolean) =>
        new Promise<void>((resolve) => {
          const look = () => {
            if (!ready()) return;
            observer.disconnect();
            resolve();
          };
          const observer = new MutationObserver(look);
          observer.observe(document.body, { subtree: true, childList: true, attributes: true });
          look();
        });
      const write: number[] = [];
      const add = IDBObjectStore.prototype.add;
      IDBObjectStore.prototype.add = function (this: IDBObjectStore, ...given: Parameters<typeof add>) {
        const at = performance.now();
        this.transaction.addEventListener('complete', () => write.push(performance.now() - at));
        return add.apply(this, given);
      };
      const readBack: number[] = [];
      for (let turn = 0; turn < times; turn += 1) {
        await until(() => run()?.dataset.ears === 'listening');
        const { check = '', phase, turn: before } = run()?.dataset ?? {};
        const at = performance.now();
        const detail = phase === 'confirming' ? 'yes' : phase === 'briefing' ? 'start' : (answers[check] ?? 'next');
        window.dispatchEvent(new CustomEvent('gloveside:utterance', { detail }));
        await until(() => run()?.dataset.turn !== before || run()?.dataset.phase === 'confirming');
        readBack.push(performance.now() - at);
        await until(() => run()?.dataset.check !== check || run()?.dataset.phase !== phase);
      }
      IDBObjectStore.prototype.add = add;
      return { readBack, write };
    },
    { answers: words, times: count },
  );
}

async function main(): Promise<void> {
  const server = await preview({ preview: { port: 0, host: '127.0.0.1', open: false }, logLevel: 'error' });
  const origin = `http://127.0.0.1:${(server.httpServer.address() as AddressInfo).port}`;
  const profile = freshProfile();
  const kestrel = demoUnit('Kestrel');
  const plan = planFor(kestrel);
  const answers = answersFor(plan);
  const hash = `#/start/${kestrel.id}/before-towing`;

  const context = await openBrowser({ profile });
  const page = context.pages()[0] ?? (await context.newPage());
  await page.addInitScript('globalThis.__name = (value) => value');
  await openWithDemo(page, origin);
  await page.getByText('Works with the network off.').waitFor({ timeout: 60_000 });
  await startRoundOf(page, kestrel);
  const { readBack, write } = await answerTimes(page, answers, 40);
  await walkByVoice(page, answers, { phase: 'complete' });
  const session = await context.newCDPSession(page);
  await session.send('HeapProfiler.collectGarbage');
  const { usedSize } = (await session.send('Runtime.getHeapUsage')) as { usedSize: number };
  await context.close();

  await new Promise<void>((resolve) => server.httpServer.close(() => resolve()));
  const loads: number[] = [];
  for (let turn = 0; turn < 5; turn += 1) loads.push(await coldLoad(profile, origin, hash));
  dropProfile(profile);

  const html = readFileSync('dist/index.html', 'utf8');
  const shipped = readdirSync('dist/assets').filter((name) => name.endsWith('.js') && html.includes(name));
  const gzip = shipped.reduce((sum, name) => sum + gzipSync(readFileSync(`dist/assets/${name}`), { level: 9 }).length, 0);

  rows.push([
    'cold offline load to the first words, CPU slowed 4 times, median of 5',
    `${median(loads).toFixed(0)} ms`,
    '1500 ms',
  ]);
  rows.push(['end of an answer to its read-back on the way, median of 40', `${median(readBack).toFixed(1)} ms`, '150 ms']);
  rows.push(['the same, worst', `${Math.max(...readBack).toFixed(1)} ms`, '']);
  rows.push(['durable write of an entry, median', `${median(write).toFixed(1)} ms`, '20 ms']);
  rows.push(['JavaScript for home and the round, gzip', `${(gzip / 1000).toFixed(1)} kB`, '250 kB']);
  rows.push([`heap after a round of ${plan.checks.length} checks`, `${(usedSize / 1e6).toFixed(1)} MB`, '']);
  const width = Math.max(...rows.map(([what]) => what.length));
  for (const [what, seen, aim] of rows)
    console.log(`${what.padEnd(width)}  ${seen.padStart(10)}  ${aim === '' ? '' : `aim ${aim}`}`);
}

await main();
