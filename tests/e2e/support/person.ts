/** People who walk a round in the page: by voice, by buttons, by keys. They know the plan and see only the screen. */
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { RoundKind } from '../../../src/domain/checks/check.ts';
import type { Plan, PlannedCheck } from '../../../src/domain/plan/plan.ts';
import { planRound } from '../../../src/domain/plan/planRound.ts';
import { goodAnswer } from '../../../src/domain/rehearsal/answers.ts';
import { DEMO_UNITS } from '../../../src/domain/unit/demo.ts';
import type { Unit } from '../../../src/domain/unit/unit.ts';

export function planFor(unit: Unit, kind: RoundKind = 'before-towing'): Plan {
  return planRound(unit, kind, Date.now());
}

/** What to say to each check, by key. */
export function answersFor(plan: Plan): Readonly<Record<string, string>> {
  return Object.fromEntries(plan.checks.map((check) => [check.key, goodAnswer(check, Date.now())]));
}

export interface VoiceWalk {
  /** Keys of checks in the order they were answered. */
  readonly asked: readonly string[];
  readonly phase: string;
}

/**
 * Speaks whenever the page listens, until the phase or the check named is reached. Runs inside the page, so that the test
 * neither polls nor sleeps: it watches the screen.
 */
export function walkByVoice(
  page: Page,
  answers: Readonly<Record<string, string>>,
  until: { phase?: string; check?: string },
): Promise<VoiceWalk> {
  return page.evaluate(
    ({ answers: words, until: goal }) =>
      new Promise<{ asked: string[]; phase: string }>((resolve, reject) => {
        const asked: string[] = [];
        const root = document.getElementById('app');
        const run = () => document.querySelector<HTMLElement>('.run');
        let lastSpoken = '';
        let stuck = setTimeout(() => {}, 0);
        const speak = (text: string) => window.dispatchEvent(new CustomEvent('gloveside:utterance', { detail: text }));
        const look = () => {
          const { phase = '', check = '', ears = '', turn = '', waiting = '' } = run()?.dataset ?? {};
          clearTimeout(stuck);
          stuck = setTimeout(() => {
            observer.disconnect();
            reject(new Error(`stuck at ${phase} ${check} (ears ${ears}): ${run()?.textContent.slice(0, 400)}`));
          }, 60_000);
          if (phase === goal.phase || (goal.check !== undefined && check === goal.check && phase === 'asking')) {
            clearTimeout(stuck);
            observer.disconnect();
            resolve({ asked, phase });
            return;
          }
          // Only the ten-minute reading is left: nobody has anything to say.
          if (ears !== 'listening' || waiting === 'true') return;
          const mark = `${phase} ${check} ${turn}`;
          if (mark === lastSpoken) return;
          lastSpoken = mark;
          const calls: Record<string, string> = {
            briefing: 'start',
            confirming: 'yes',
            'wrap-up': 'round complete',
            held: 'carry on',
          };
          const isCheck = calls[phase] === undefined;
          if (isCheck) asked.push(check);
          // After this turn of the page, so that what was heard never arrives while the screen is still changing.
          setTimeout(() => speak(calls[phase] ?? words[check] ?? 'next'), 0);
        };
        const observer = new MutationObserver(look);
        observer.observe(root as HTMLElement, { subtree: true, childList: true, characterData: true, attributes: true });
        look();
      }),
    { answers, until },
  );
}

/** Opens the app with the demo units in it, ears scripted unless told otherwise. */
export async function openWithDemo(page: Page, origin: string, query = '?ears=scripted&mouth=silent&clock=60'): Promise<void> {
  await page.goto(`${origin}/${query}#/units`);
  await page.getByRole('button', { name: 'Add demo data' }).click();
  await page.getByText('Heron', { exact: false }).first().waitFor();
  await page.goto(`${origin}/${query}#/`);
}

/** Starts a round of a demo unit from the home screen and waits for its briefing. */
export async function startRoundOf(page: Page, unit: Unit, kind: RoundKind = 'before-towing'): Promise<void> {
  await page.evaluate((hash) => {
    location.hash = hash;
  }, `#/start/${unit.id}/${kind}`);
  await page.locator('.run[data-phase="briefing"]').waitFor();
}

export function demoUnit(name: string): Unit {
  const unit = DEMO_UNITS.find((candidate) => candidate.name === name);
  if (!unit) throw new Error(`there is no demo unit ${name}`);
  return unit;
}

interface Stored {
  readonly entries: readonly {
    readonly kind: string;
    readonly seq: number;
    readonly key?: string;
    readonly how?: { readonly via: string; readonly by: string };
  }[];
}

/** The entries of the latest round as they are in the database, read without the app's own code. */
export function storedEntries(page: Page): Promise<Stored['entries']> {
  return page.evaluate(
    () =>
      new Promise<Stored['entries']>((resolve, reject) => {
        const opening = indexedDB.open('gloveside');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const database = opening.result;
          const read = database.transaction('entries').objectStore('entries').getAll();
          read.onsuccess = () => {
            const all = read.result as { round: string; seq: number; at: number; kind: string }[];
            const newest = all.reduce((latest, entry) => (entry.at > latest.at ? entry : latest), all[0] ?? { round: '', at: 0 });
            database.close();
            resolve(all.filter((entry) => entry.round === newest.round).sort((a, b) => a.seq - b.seq));
          };
          read.onerror = () => reject(read.error);
        };
      }),
  );
}

const phaseOf = (page: Page) => page.locator('.run').getAttribute('data-phase');
const checkOf = (page: Page) => page.locator('.run').getAttribute('data-check');
const turnOf = async (page: Page) => Number(await page.locator('.run').getAttribute('data-turn'));

/** Presses until an entry was kept: after a change of the screen a press rests, as it does for a person who is too quick. */
async function untilKept(page: Page, press: () => Promise<void>): Promise<void> {
  const before = await turnOf(page);
  await expect
    .poll(
      async () => {
        if ((await turnOf(page)) === before) await press();
        return turnOf(page);
      },
      { interval: 120, timeout: 15_000 },
    )
    .toBeGreaterThan(before);
}

/** Answers the check on the screen with its good answer, by touching the tiles. */
async function tapAnswer(page: Page, check: PlannedCheck): Promise<void> {
  const { expects } = check;
  const tap = (selector: string) => page.locator(selector).first().click({ timeout: 2_000 });
  switch (expects.kind) {
    case 'state':
    case 'choice':
      return untilKept(page, () => tap('.board [data-ring="0"]'));
    case 'count':
      if ((await page.locator('.count-board').count()) > 0) return untilKept(page, () => tap('.count-board [data-ring="0"]'));
      await typeOnPad(page, '0');
      return untilKept(page, () => tap('[data-part="keep"]'));
    case 'date':
      await typeOnPad(page, dateDigits(check));
      return untilKept(page, () => tap('[data-part="keep"]'));
    case 'reading':
      return untilKept(page, async () => {
        await tap('[data-part="value"]');
        await tap('[data-part="keep"]');
      });
  }
}

/** Types on the digit pad and sees to it that every digit arrived. */
async function typeOnPad(page: Page, digits: string): Promise<void> {
  const pad = page.locator('.digit-pad');
  const typed = page.locator('.typed-value');
  let shown = await typed.textContent();
  for (const digit of digits) {
    await expect
      .poll(
        async () => {
          await pad.getByRole('button', { name: digit, exact: true }).click({ timeout: 2_000 });
          return typed.textContent();
        },
        { interval: 400, timeout: 10_000 },
      )
      .not.toBe(shown);
    shown = await typed.textContent();
  }
}

/** The digits that a date is typed with: WWYY, or MMYYYY. */
function dateDigits(check: PlannedCheck): string {
  const year = new Date().getUTCFullYear();
  if (check.expects.kind === 'date' && check.expects.form === 'dot-week') return `20${String(year - 2).slice(2)}`;
  return `06${check.judge.rule === 'alarm-date' ? year + 3 : year - 2}`;
}

/** Walks a whole round with the touch screen. @returns keys in the order answered */
export async function walkByButtons(page: Page, plan: Plan): Promise<readonly string[]> {
  await beginWith(page, /begin alone/i);
  return walkWith(page, plan, tapAnswer);
}

async function keyAnswer(page: Page, check: PlannedCheck): Promise<void> {
  const { expects } = check;
  const press = (key: string) => page.keyboard.press(key);
  switch (expects.kind) {
    case 'state':
      return untilKept(page, () => press(expects.yesMeans === 'ok' ? 'y' : 'n'));
    case 'choice':
      return untilKept(page, () => press('1'));
    case 'count':
      return untilKept(page, async () => {
        await press('0');
        await press('Enter');
      });
    case 'date':
      return untilKept(page, async () => {
        for (let turn = 0; turn < 8; turn += 1) await press('Backspace');
        await page.keyboard.type(dateDigits(check));
        await press('Enter');
      });
    case 'reading': {
      const value = goodAnswer(check, Date.now());
      const digits = value.endsWith(' below') ? `-${value.replace(' below', '')}` : value;
      return untilKept(page, async () => {
        for (let turn = 0; turn < 8; turn += 1) await press('Backspace');
        await page.keyboard.type(digits);
        await press('Enter');
      });
    }
  }
}

/** Walks a whole round with the keyboard. */
export async function walkByKeys(page: Page, plan: Plan): Promise<readonly string[]> {
  await expect
    .poll(
      async () => {
        if ((await phaseOf(page)) === 'briefing') await page.keyboard.press('y');
        return phaseOf(page);
      },
      { interval: 400, timeout: 10_000 },
    )
    .toBe('asking');
  return walkWith(page, plan, keyAnswer);
}

async function walkWith(
  page: Page,
  plan: Plan,
  answer: (page: Page, check: PlannedCheck) => Promise<void>,
): Promise<readonly string[]> {
  const asked: string[] = [];
  for (let turn = 0; turn < plan.checks.length + 5; turn += 1) {
    await page.locator('.run[data-phase="asking"], .run[data-phase="wrap-up"]').waitFor({ timeout: 15_000 });
    if ((await phaseOf(page)) === 'wrap-up') {
      // Only the ten-minute reading is left; it comes due by itself.
      if (asked.length < plan.checks.length) {
        await page.locator('.run[data-phase="asking"]').waitFor();
        continue;
      }
      return asked;
    }
    const key = (await checkOf(page)) ?? '';
    const check = plan.checks.find((candidate) => candidate.key === key);
    if (!check) throw new Error(`the page asks ${key}, which is not in the plan`);
    await answer(page, check);
    asked.push(key);
  }
  return asked;
}

/** Says something to the open ears and waits for what it is to lead to. */
export async function say(page: Page, words: string): Promise<void> {
  await page.locator('.run[data-ears="listening"]').waitFor();
  await page.evaluate((detail) => {
    window.dispatchEvent(new CustomEvent('gloveside:utterance', { detail }));
  }, words);
}

/** Presses a button of the briefing; right after the screen has changed a press rests, so it is tried until it counts. */
export async function beginWith(page: Page, name: RegExp): Promise<void> {
  await expect
    .poll(
      async () => {
        if ((await phaseOf(page)) === 'briefing') await page.getByRole('button', { name }).first().click();
        return phaseOf(page);
      },
      { interval: 400, timeout: 20_000 },
    )
    .toBe('asking');
}

/** Presses on the round's screen until another check is asked. */
export async function pressOn(page: Page, press: () => Promise<void>): Promise<void> {
  await untilKept(page, press);
}
