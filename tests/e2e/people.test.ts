/** Two people on one round; a newcomer with no unit; the way in through the form; the browser's own recogniser. */
import type { BrowserContext, Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, inject, it } from 'vitest';
import { dropProfile, freshProfile, openBrowser, openPage } from './support/browser.ts';
import {
  answersFor,
  beginWith,
  demoUnit,
  openWithDemo,
  planFor,
  pressOn,
  say,
  startRoundOf,
  storedEntries,
  walkByVoice,
} from './support/person.ts';

const origin = inject('origin');

describe('people', () => {
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

  it('two of them: one reads values aloud in any order, the other presses', async () => {
    const heron = demoUnit('Heron');
    const plan = planFor(heron);
    await openWithDemo(page, origin);
    await startRoundOf(page, heron);
    await beginWith(page, /two of us/i);
    await walkByVoice(page, answersFor(plan), { check: 'tire-pressure@left' });
    await say(page, 'left sixty-five, right sixty-four');
    await expect
      .poll(async () => {
        if ((await page.locator('.run').getAttribute('data-phase')) === 'confirming') await say(page, 'yes');
        return (await storedEntries(page)).filter((entry) => entry.key?.startsWith('tire-pressure')).length;
      })
      .toBe(2);
    const here = await page.locator('.run').getAttribute('data-check');
    await pressOn(page, async () => {
      await page.locator('.board [data-part="value"]').first().click();
      await page.locator('.board [data-part="keep"]').first().click();
    });
    await expect.poll(async () => page.locator('.run').getAttribute('data-check')).not.toBe(here);
    const entries = (await storedEntries(page)).filter((entry) => entry.kind === 'answered');
    expect(entries.filter((entry) => entry.key?.startsWith('tire-pressure')).map((entry) => entry.how?.by)).toEqual([
      'second',
      'second',
    ]);
    expect(entries.at(-1)).toMatchObject({ key: here, how: { via: 'button', by: 'first' } });
    expect(troubles).toEqual([]);
  });

  it('a newcomer presses one button and watches a rehearsal that answers itself', async () => {
    await page.goto(`${origin}/#/`);
    await page.getByRole('button', { name: /rehearsal/i }).click();
    await page.locator('.run[data-phase="asking"]').waitFor({ timeout: 20_000 });
    await expect
      .poll(async () => Number(await page.locator('.run').getAttribute('data-turn')), { timeout: 60_000 })
      .toBeGreaterThan(6);
    expect(await page.getByText('demo data', { exact: false }).count()).toBeGreaterThan(0);
    expect(troubles).toEqual([]);
  });

  it('a first-time owner makes a unit from a template and starts its round', async () => {
    await page.goto(`${origin}/?ears=scripted&mouth=silent#/unit/new`);
    await page.getByLabel(/name/i).first().fill('Osprey');
    await page
      .locator('.template, .templates button, main button')
      .filter({ hasText: /hand-crank|crank/i })
      .first()
      .click();
    await page.getByRole('button', { name: /^save/i }).first().click();
    await page.getByRole('heading', { name: 'Osprey' }).waitFor();
    await page.getByRole('button', { name: 'Before towing' }).first().click();
    await page.locator('.run[data-phase="briefing"]').waitFor();
    await say(page, 'start');
    await page.locator('.run[data-phase="asking"]').waitFor();
    await say(page, 'hold on a second');
    await page.locator('.run[data-phase="held"]').waitFor();
    await say(page, 'carry on');
    await page.locator('.run[data-phase="asking"]').waitFor();
    expect((await storedEntries(page)).map((entry) => entry.kind)).toEqual(['begun', 'held', 'resumed']);
    expect(troubles).toEqual([]);
  });

  it("is heard by the browser's own recogniser where that is chosen", async () => {
    // Chromium here has no speech service; this stands in for it behind the very same interface.
    await page.addInitScript(() => {
      const live: EventTarget[] = [];
      class Stub extends EventTarget {
        onaudiostart: (() => void) | null = null;
        onresult: ((event: unknown) => void) | null = null;
        onend: (() => void) | null = null;
        static available = async () => 'available';
        start() {
          live.push(this);
          setTimeout(() => this.onaudiostart?.(), 0);
        }
        abort() {
          live.splice(live.indexOf(this), 1);
          setTimeout(() => this.onend?.(), 0);
        }
      }
      Object.assign(window, {
        SpeechRecognition: Stub,
        webkitSpeechRecognition: Stub,
        SpeechRecognitionPhrase: undefined,
        hearAsBrowser: (transcript: string) => {
          const recognizer = live.at(-1) as Stub | undefined;
          const result = Object.assign([{ transcript, confidence: 0.93 }], { isFinal: true });
          recognizer?.onresult?.({ results: [result], resultIndex: 0 });
        },
      });
    });
    await context.grantPermissions(['microphone'], { origin });
    await openWithDemo(page, origin, '');
    await page.goto(`${origin}/#/settings`);
    await page
      .getByRole('radio', { name: /browser/i })
      .or(page.getByLabel(/the browser's/i))
      .last()
      .check({ force: true });
    await startRoundOf(page, demoUnit('Heron'), 'stop-on-the-road');
    const hear = (transcript: string) =>
      page.evaluate((words) => (window as unknown as { hearAsBrowser(words: string): void }).hearAsBrowser(words), transcript);
    await page.locator('.run[data-ears="listening"]').waitFor();
    await hear('start');
    await page.locator('.run[data-phase="asking"][data-ears="listening"]').waitFor();
    const plan = planFor(demoUnit('Heron'), 'stop-on-the-road');
    const answers = answersFor(plan);
    const first = (await page.locator('.run').getAttribute('data-check')) ?? '';
    await hear(answers[first] ?? '');
    await page.locator('.run[data-turn="2"]').waitFor();
    const [, answered] = await storedEntries(page);
    expect(answered).toMatchObject({
      kind: 'answered',
      key: first,
      how: { via: 'voice', provider: 'browser', confidence: 0.93 },
    });
    expect(troubles).toEqual([]);
  });
});
