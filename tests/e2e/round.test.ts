/** The main job on the production build: whole rounds by voice, by buttons, by keys, by two people. */
import type { BrowserContext, Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, inject, it } from 'vitest';
import { dropProfile, freshProfile, openBrowser, openPage } from './support/browser.ts';
import {
  answersFor,
  demoUnit,
  openWithDemo,
  planFor,
  startRoundOf,
  storedEntries,
  walkByButtons,
  walkByKeys,
  walkByVoice,
} from './support/person.ts';

const origin = inject('origin');

describe('a whole round', () => {
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

  it('by voice alone, with no tap after the start', async () => {
    const kestrel = demoUnit('Kestrel');
    const plan = planFor(kestrel);
    await openWithDemo(page, origin);
    await startRoundOf(page, kestrel);
    const { asked } = await walkByVoice(page, answersFor(plan), { phase: 'complete' });
    expect(new Set(asked)).toEqual(new Set(plan.checks.map((check) => check.key)));
    const entries = await storedEntries(page);
    expect(entries.at(-1)?.kind).toBe('completed');
    const answered = entries.filter((entry) => entry.kind === 'answered');
    expect(new Set(answered.map((entry) => entry.key)).size).toBe(plan.checks.length);
    expect(answered.every((entry) => entry.how?.via === 'voice')).toBe(true);
    expect(entries.map((entry) => entry.seq)).toEqual(entries.map((_, index) => index));
    expect(troubles).toEqual([]);
  });

  it('by buttons alone, with the ears off', async () => {
    const kestrel = demoUnit('Kestrel');
    const plan = planFor(kestrel);
    await openWithDemo(page, origin, '?ears=off&mouth=silent&clock=60');
    await startRoundOf(page, kestrel);
    const asked = await walkByButtons(page, plan);
    expect(new Set(asked)).toEqual(new Set(plan.checks.map((check) => check.key)));
    const answered = (await storedEntries(page)).filter((entry) => entry.kind === 'answered');
    expect(answered.every((entry) => entry.how?.via === 'button')).toBe(true);
    expect(troubles).toEqual([]);
  });

  it('by keyboard alone, with the ears off', async () => {
    const heron = demoUnit('Heron');
    const plan = planFor(heron);
    await openWithDemo(page, origin, '?ears=off&mouth=silent&clock=60');
    await startRoundOf(page, heron);
    const asked = await walkByKeys(page, plan);
    expect(new Set(asked)).toEqual(new Set(plan.checks.map((check) => check.key)));
    const answered = (await storedEntries(page)).filter((entry) => entry.kind === 'answered');
    expect(answered.every((entry) => entry.how?.via === 'key')).toBe(true);
    expect(troubles).toEqual([]);
  });
});
