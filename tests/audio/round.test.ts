/**
 * A whole round heard by the built-in ears: the production build, the network gone, a file for a microphone, and not one tap after
 * the round was opened. Each time the app opens the microphone the file holds what this person says to the check on the screen.
 */
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { preview } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { RoundKind } from '../../src/domain/checks/check.ts';
import { interpret } from '../../src/domain/language/interpret.ts';
import type { InterpretContext } from '../../src/domain/language/meaning.ts';
import { speakNumber } from '../../src/domain/language/speakNumber.ts';
import type { PlannedCheck } from '../../src/domain/plan/plan.ts';
import { dropProfile, freshProfile, openBrowser } from '../e2e/support/browser.ts';
import { answersFor, demoUnit, openWithDemo, planFor, storedEntries } from '../e2e/support/person.ts';
import { seeded } from './random.ts';
import { prepare, VOICES } from './voices.ts';
import { writeWav } from './wav.ts';

const RATE = 16_000;
/** Any round of the app's; the short one by default. */
const KINDS: Readonly<Record<RoundKind, string>> = {
  'before-towing': 'Before towing',
  'before-leaving-the-lake': 'Before leaving the lake',
  'stop-on-the-road': 'Stop on the road',
};
const KIND = (Object.keys(KINDS) as RoundKind[]).find((kind) => kind === process.env.ROUND) ?? 'stop-on-the-road';
const unit = demoUnit('Kestrel');
const plan = planFor(unit, KIND);
const words = answersFor(plan);
const folder = mkdtempSync(join(tmpdir(), 'round-'));
const file = join(folder, 'microphone.wav');
const profile = freshProfile();
const random = seeded(1);
let context: BrowserContext | undefined;

/** Words after a third of a second, in a quiet room; where nothing comes of them, the same again some seconds later, as people do. */
function speak(text: string): void {
  const speech = prepare(VOICES['flite-rms']!(text, join(folder, 'scratch.wav')));
  const samples = new Float32Array(speech.length + 6 * RATE);
  samples.set(speech, RATE / 3);
  for (const [n, sample] of samples.entries()) samples[n] = sample + 0.0012 * (random() - 0.5);
  writeWav(file, { rate: RATE, samples });
}

/** An answer as this person says it, and as the app says it back. */
function spokenOf(check: PlannedCheck | undefined, usual: string): readonly string[] {
  if (!check) return [usual];
  const meaning = interpret(usual, contextOf(check));
  const [value] = meaning.intent === 'reading' ? meaning.readings.map((reading) => reading.value) : [];
  if (value === undefined) return [usual];
  const noun = check.expects.kind === 'count' ? [`no ${check.expects.noun[1]}`] : [];
  return [usual, speakNumber(value), ...(value === 0 ? noun : [])];
}

/** What a "yes" would say yes to: the label of its button, up to the next button's. */
const saidBack = (shown: string) => (/Yes, ([^A-Z]*)/.exec(shown)?.[1] ?? shown).toLowerCase();

/** The same answer in other words. */
function waysOf(check: PlannedCheck | undefined, usual: string): readonly string[] {
  if (check?.expects.kind === 'state') return [...new Set([usual, ...check.expects.ok])];
  if (check?.expects.kind === 'count' && usual === 'none') return [usual, 'zero', ...check.expects.nonePhrases];
  return [usual];
}

const contextOf = ({ expects, names, position }: PlannedCheck): InterpretContext => ({
  expects,
  names,
  position,
  positions: [],
  others: [],
  last: null,
  previous: null,
  mode: 'answer',
});

/** What this person says next: the usual answer; where that was not understood, the same in other words, as people do. */
function reply(phase: string, key: string, attempt: number, shown: string): string {
  const calls = CALLS[phase];
  if (calls) return calls[attempt % calls.length] ?? '';
  const usual = words[key] ?? 'say again';
  const check = plan.checks.find((one) => one.key === key);
  if (phase === 'confirming' && spokenOf(check, usual).some((words) => saidBack(shown).includes(words))) return 'yes';
  const ways = waysOf(check, usual);
  return ways[attempt % ways.length] ?? usual;
}

/** To begin, to end and to go on: as the app asks for it, and where that is not understood as it may be said too. */
const CALLS: Readonly<Record<string, readonly string[]>> = {
  briefing: ['start', 'ready'],
  'wrap-up': ['round complete', 'finished'],
  held: ['carry on', 'resume'],
};

beforeAll(() => {
  if (!existsSync('dist/index.html')) throw new Error('The app is not built. Run `npm run build` first.');
  speak('start');
});

afterAll(async () => {
  await context?.close();
  dropProfile(profile);
  rmSync(folder, { recursive: true, force: true });
});

/** The app, kept for offline use, with the demo units and a microphone that is given back after each answer. */
async function ready(): Promise<{ page: Page; origin: string }> {
  const server = await preview({ preview: { port: 0, host: '127.0.0.1', open: false }, logLevel: 'error' });
  const origin = `http://127.0.0.1:${(server.httpServer.address() as AddressInfo).port}`;
  context = await openBrowser({
    profile,
    permissions: ['microphone'],
    flags: ['--use-fake-ui-for-media-stream', '--use-fake-device-for-media-stream', `--use-file-for-fake-audio-capture=${file}`],
  });
  const page = context.pages()[0] ?? (await context.newPage());
  await openWithDemo(page, origin, '?mouth=silent');
  await page.getByText('Works with the network off.').waitFor({ timeout: 60_000 });
  await page.evaluate(() => {
    location.hash = '#/settings';
  });
  await page.getByText('Keep the microphone open between answers').click();
  await context.setOffline(true);
  await new Promise<void>((resolve) => server.httpServer.close(() => resolve()));
  return { page, origin };
}

describe('a round through the microphone', () => {
  it('is walked to its end by the built-in ears, with the network off and no tap', { timeout: 600_000 }, async () => {
    const { page, origin } = await ready();
    let turns = 0;
    const attempts = new Map<string, number>();
    await page.exposeFunction('aboutToListen', (phase: string, check: string, shown: string) => {
      const place = check === '' ? phase : check;
      const attempt = attempts.get(place) ?? 0;
      attempts.set(place, attempt + 1);
      turns += 1;
      speak(reply(phase, check, attempt, shown));
    });
    // Nothing of the app's is replaced: it opens the browser's own microphone, a moment after the file was laid in.
    await page.addInitScript(`{
      const open = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
      navigator.mediaDevices.getUserMedia = async (constraints) => {
        await new Promise((resolve) => setTimeout(resolve, 50));
        const run = document.querySelector('.run');
        await window.aboutToListen(run?.dataset.phase ?? '', run?.dataset.check ?? '', run?.textContent ?? '');
        return open(constraints);
      };
    }`);
    await page.goto(`${origin}/?mouth=silent#/`);
    await page.reload();
    // The one press: it opens the round and lets the browser use sound.
    await page.getByRole('button', { name: `${KINDS[KIND]}: start with ${unit.name}` }).click();
    await page.locator('.run[data-phase="complete"]').waitFor({ timeout: 560_000 });

    const entries = await storedEntries(page);
    const answered = entries.filter(({ kind }) => kind === 'answered');
    expect(new Set(answered.map(({ key }) => key))).toEqual(new Set(plan.checks.map(({ key }) => key)));
    expect(new Set(answered.map(({ how }) => how?.via))).toEqual(new Set(['voice']));
    // What was kept is what was said: each transcript means what the answer means.
    const wrong = plan.checks.flatMap((check) => {
      const kept = [...answered].reverse().find(({ key }) => key === check.key) as
        | { readonly how?: { readonly transcript: string | null; readonly provider: string | null } }
        | undefined;
      const mean = (text: string) => {
        const { intent, ...rest } = interpret(text, contextOf(check));
        return intent === 'verdict' && 'verdict' in rest
          ? rest.verdict
          : JSON.stringify([intent, 'readings' in rest && rest.readings]);
      };
      const heard = kept?.how?.transcript ?? '';
      return kept?.how?.provider === 'built-in' && mean(heard) === mean(words[check.key] ?? '')
        ? []
        : [`${check.key}: "${heard}"`];
    });
    expect(wrong).toEqual([]);
    expect(turns).toBeLessThanOrEqual(3 * plan.checks.length);
  });
});
