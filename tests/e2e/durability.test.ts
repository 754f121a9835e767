/** What was heard confirmed can not be lost: offline, killed, refused, opened twice. */
import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import type { BrowserContext } from 'playwright-core';
import { preview } from 'vite';
import { afterEach, describe, expect, inject, it } from 'vitest';
import { dropProfile, freshProfile, openBrowser, openPage } from './support/browser.ts';
import {
  answersFor,
  beginWith,
  demoUnit,
  openWithDemo,
  planFor,
  pressOn,
  startRoundOf,
  storedEntries,
  walkByVoice,
} from './support/person.ts';

const origin = inject('origin');
const open: BrowserContext[] = [];
const profiles: string[] = [];

afterEach(async () => {
  for (const context of open.splice(0)) await context.close().catch(() => {});
  for (const profile of profiles.splice(0)) dropProfile(profile);
});

async function browser(profile: string, options: Parameters<typeof openBrowser>[0] = {}): Promise<BrowserContext> {
  const context = await openBrowser({ ...options, profile });
  open.push(context);
  return context;
}

function newProfile(): string {
  const profile = freshProfile();
  profiles.push(profile);
  return profile;
}

/** Every process of the browser with this profile, as a power cut would end them: no clean-up, no warning. */
function killAll(profile: string): number {
  const pids = readdirSync('/proc').filter((name) => {
    if (!/^\d+$/.test(name)) return false;
    try {
      return readFileSync(`/proc/${name}/cmdline`, 'utf8').includes(profile);
    } catch {
      return false;
    }
  });
  for (const pid of pids) {
    try {
      execFileSync('kill', ['-9', pid]);
    } catch {
      // Gone with its parent.
    }
  }
  return pids.length;
}

describe('the record', () => {
  it('loses nothing that was read back when every process of the browser is killed in the middle', async () => {
    const profile = newProfile();
    const kestrel = demoUnit('Kestrel');
    const plan = planFor(kestrel);
    const target = plan.checks[25]?.key ?? '';
    const first = await browser(profile);
    const { page } = await openPage(first, origin);
    await openWithDemo(page, origin);
    await startRoundOf(page, kestrel);
    const walk = await walkByVoice(page, answersFor(plan), { check: target });
    // What the person heard confirmed: the read-back on the screen comes after the entry is kept.
    const readBack = await page.locator('.run').getAttribute('data-turn');
    expect(killAll(profile)).toBeGreaterThan(0);

    const second = await browser(profile);
    const again = await openPage(second, origin);
    await again.page.goto(`${origin}/?ears=scripted&mouth=silent#/`);
    await again.page
      .getByRole('button', { name: /Carry on: Kestrel/ })
      .first()
      .click();
    await again.page.locator(`.run[data-phase="asking"][data-check="${target}"]`).waitFor();
    const entries = await storedEntries(again.page);
    expect(entries.length).toBeGreaterThanOrEqual(Number(readBack));
    const kept = new Set(entries.filter((entry) => entry.kind === 'answered').map((entry) => entry.key));
    for (const key of walk.asked.filter((asked) => asked !== target)) expect(kept, key).toContain(key);
    expect(again.troubles).toEqual([]);
  });

  it('runs a whole round with the server gone, from a cold start', async () => {
    const profile = newProfile();
    const server = await preview({ preview: { port: 0, host: '127.0.0.1', open: false }, logLevel: 'error' });
    const own = `http://127.0.0.1:${(server.httpServer.address() as AddressInfo).port}`;
    const first = await browser(profile);
    const { page } = await openPage(first, own);
    await openWithDemo(page, own);
    await page.getByText('Works with the network off.').waitFor({ timeout: 30_000 });
    await first.close();
    await new Promise<void>((resolve) => server.httpServer.close(() => resolve()));

    const second = await browser(profile);
    await second.setOffline(true);
    const cold = await openPage(second, own);
    await cold.page.goto(`${own}/?ears=scripted&mouth=silent#/`);
    const heron = demoUnit('Heron');
    const plan = planFor(heron, 'stop-on-the-road');
    await startRoundOf(cold.page, heron, 'stop-on-the-road');
    await walkByVoice(cold.page, answersFor(plan), { phase: 'complete' });
    expect((await storedEntries(cold.page)).at(-1)?.kind).toBe('completed');
    expect(cold.troubles).toEqual([]);
  });

  it('lets only one tab run a round', async () => {
    const profile = newProfile();
    const kestrel = demoUnit('Kestrel');
    const plan = planFor(kestrel);
    const context = await browser(profile);
    const { page } = await openPage(context, origin);
    await openWithDemo(page, origin);
    await startRoundOf(page, kestrel);
    await walkByVoice(page, answersFor(plan), { check: plan.checks[3]?.key ?? '' });
    const other = await context.newPage();
    await other.goto(`${origin}/?ears=scripted&mouth=silent#/`);
    await other
      .getByRole('button', { name: /Carry on: Kestrel/ })
      .first()
      .click();
    await other.getByText('This round is open in another tab or window.', { exact: false }).waitFor();
  });

  it('goes on with buttons when the microphone is refused, and says so', async () => {
    const profile = newProfile();
    const context = await browser(profile, { flags: ['--deny-permission-prompts'] });
    const { page, troubles } = await openPage(context, origin);
    await openWithDemo(page, origin, '');
    await startRoundOf(page, demoUnit('Heron'), 'stop-on-the-road');
    await page.getByText('The microphone is not allowed', { exact: false }).first().waitFor({ timeout: 20_000 });
    await beginWith(page, /begin alone/i);
    await pressOn(page, () => page.locator('.board [data-ring="0"]').first().click());
    await page.locator('.run[data-turn="2"]').waitFor();
    expect(troubles).toEqual([]);
  });
});
