/**
 * Takes the README's pictures from the real app: the production build, the demo world, a round walked to a few points.
 * `npm run build && npx tsx tests/tools/screenshots.ts`
 */
import { mkdirSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import type { Page } from 'playwright-core';
import { preview } from 'vite';
import { DESKTOP, dropProfile, freshProfile, openBrowser, PHONE } from '../e2e/support/browser.ts';
import { answersFor, demoUnit, openWithDemo, planFor, startRoundOf, walkByVoice } from '../e2e/support/person.ts';

const OUT = 'tests/pictures';

async function main(): Promise<void> {
  mkdirSync(OUT, { recursive: true });
  const server = await preview({ preview: { port: 0, host: '127.0.0.1', open: false }, logLevel: 'error' });
  const origin = `http://127.0.0.1:${(server.httpServer.address() as AddressInfo).port}`;
  const shot = (page: Page, name: string) => page.screenshot({ path: `${OUT}/${name}.png` });
  const show = async (page: Page, hash: string) => {
    await page.evaluate((place) => {
      location.hash = place;
    }, hash);
    await page.locator('h1').first().waitFor();
    await page.locator('[aria-busy="true"]').waitFor({ state: 'detached' });
    await page.getByText('Reading the earlier rounds…').first().waitFor({ state: 'detached' });
    await page.evaluate(() => scrollTo(0, 0));
  };
  const walk = async (scheme: 'light' | 'dark') => {
    const profile = freshProfile();
    const context = await openBrowser({ profile, viewport: PHONE, colorScheme: scheme });
    const page = context.pages()[0] ?? (await context.newPage());
    // The runner names functions with a helper that the page has not.
    await page.addInitScript('globalThis.__name = (value) => value');
    await openWithDemo(page, origin);
    await page.getByRole('heading', { name: 'Kestrel' }).waitFor();
    await shot(page, `home-${scheme}`);
    const kestrel = demoUnit('Kestrel');
    const plan = planFor(kestrel);
    await startRoundOf(page, kestrel);
    for (const [check, name] of [
      ['cable-slack@left', 'cable'],
      ['tire-pressure@left', 'pressure'],
      ['lugs-moved@left', 'lugs'],
    ] as const) {
      await walkByVoice(page, answersFor(plan), { check });
      await shot(page, `${name}-${scheme}`);
    }
    await walkByVoice(page, answersFor(plan), { phase: 'complete' });
    await shot(page, `complete-${scheme}`);
    await context.close();
    dropProfile(profile);
  };
  await walk('light');
  await walk('dark');

  const profile = freshProfile();
  const context = await openBrowser({ profile, viewport: DESKTOP, colorScheme: 'light' });
  const page = context.pages()[0] ?? (await context.newPage());
  await page.addInitScript('globalThis.__name = (value) => value');
  await openWithDemo(page, origin);
  await show(page, '#/unit/demo-heron');
  await shot(page, 'unit');
  await show(page, '#/unit/demo-heron/trends');
  await shot(page, 'trends');
  await context.close();
  dropProfile(profile);
  await new Promise<void>((resolve) => server.httpServer.close(() => resolve()));
}

await main();
