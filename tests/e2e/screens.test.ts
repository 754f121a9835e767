/** Every screen: no accessibility violation, nothing that leaves the device, targets that a mitten can hit. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { DESKTOP, dropProfile, freshProfile, openBrowser, openPage, PHONE } from './support/browser.ts';
import { answersFor, demoUnit, openWithDemo, planFor, startRoundOf, walkByVoice } from './support/person.ts';

const origin = inject('origin');
const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

/** WCAG 2.2 A and AA; on the round AAA contrast too. */
async function violations(page: Page, strict: boolean): Promise<readonly string[]> {
  await page.evaluate(axeSource);
  const found = await page.evaluate(async (enhanced) => {
    const { axe } = window as unknown as {
      axe: { run(context: Document, options: object): Promise<{ violations: Violation[] }> };
    };
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
    const result = await axe.run(document, {
      runOnly: { type: 'tag', values: tags },
      ...(enhanced ? { rules: { 'color-contrast-enhanced': { enabled: true } } } : {}),
    });
    return result.violations;
  }, strict);
  return found.flatMap((violation) =>
    violation.nodes.map((node) => `${violation.id}: ${node.html.slice(0, 160)} ${node.failureSummary ?? ''}`),
  );
}

const unit = 'demo-heron';
const PLACES: readonly (readonly [string, string])[] = [
  ['home', '#/'],
  ['units', '#/units'],
  ['a new unit', '#/unit/new'],
  ['the profile', `#/unit/${unit}/edit`],
  ['a unit', `#/unit/${unit}`],
  ['trends', `#/unit/${unit}/trends`],
  ['comparing', `#/unit/${unit}/compare`],
  ['weights', `#/unit/${unit}/weights`],
  ['files', '#/files'],
  ['settings', '#/settings'],
  ['numbers', '#/numbers'],
  ['a unit that is not here', '#/unit/nobody'],
];

describe.each([
  ['phone', PHONE, 'light'],
  ['desktop', DESKTOP, 'dark'],
] as const)('on a %s', (_name, viewport, colorScheme) => {
  const profile = freshProfile();
  let context: BrowserContext;
  let page: Page;
  let troubles: string[];

  beforeAll(async () => {
    context = await openBrowser({ profile, viewport, colorScheme });
    ({ page, troubles } = await openPage(context, origin));
    await openWithDemo(page, origin);
  });
  afterAll(async () => {
    await context.close();
    dropProfile(profile);
  });

  /** The page that was there stays until the next one is ready: its heading is marked, and the next one's waited for. */
  const goTo = async (hash: string) => {
    await page.evaluate((place) => {
      if ((location.hash || '#/') !== place) document.querySelector('h1')?.setAttribute('data-left', '');
      location.hash = place;
    }, hash);
    await page.locator('h1:not([data-left])').first().waitFor();
    await page.locator('[aria-busy="true"]').waitFor({ state: 'detached' });
  };

  it.each(PLACES)('%s has no accessibility violation and stays on the device', async (_place, hash) => {
    await goTo(hash);
    expect(await violations(page, false)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth)).toBe(true);
    expect(troubles.splice(0)).toEqual([]);
  });

  it('a round played back and its report have none either', async () => {
    await goTo(`#/unit/${unit}`);
    await page.getByRole('link', { name: 'Play it back' }).first().click();
    await page.locator('h1').first().waitFor();
    expect(await violations(page, false)).toEqual([]);
    await goTo(`#/unit/${unit}`);
    await page.getByRole('link', { name: 'Report' }).first().click();
    await page.getByRole('heading', { name: /report of a round/ }).waitFor();
    expect(await violations(page, false)).toEqual([]);
    const margin = { top: '8mm', bottom: '8mm', left: '8mm', right: '8mm' };
    const printed = (await page.pdf({ format: 'Letter', margin })).toString('latin1');
    expect(printed.match(/\/Type\s*\/Page[^s]/g)).toHaveLength(1);
    expect(troubles.splice(0)).toEqual([]);
  });

  it('every kind of check has none, with contrast of seven to one and targets for a mitten', async () => {
    const heron = demoUnit('Heron');
    const plan = planFor(heron);
    await startRoundOf(page, heron);
    expect(await violations(page, true)).toEqual([]);
    const seen = new Set<string>();
    for (const check of plan.checks) {
      const kind = check.expects.kind === 'count' ? `count ${check.expects.max > 8}` : check.expects.kind;
      if (seen.has(kind)) continue;
      seen.add(kind);
      await walkByVoice(page, answersFor(plan), { check: check.key });
      expect(await violations(page, true), check.key).toEqual([]);
      const small = await page.evaluate(() =>
        [...document.querySelectorAll<HTMLElement>('.board .tile')]
          .map((tile) => ({ name: tile.textContent, box: tile.getBoundingClientRect() }))
          .filter(({ box }) => box.height < 96 || box.width < 96)
          .map(({ name, box }) => `${name}: ${Math.round(box.width)} x ${Math.round(box.height)}`),
      );
      expect(small, check.key).toEqual([]);
    }
    expect(seen.size).toBeGreaterThanOrEqual(5);
    await goTo('#/');
    expect(troubles.splice(0)).toEqual([]);
  });
});
