/** People who walk a round in the page: by voice, by buttons, by keys. They know the plan and see only the screen. */
import type { Page } from 'playwright-core';
import type { RoundKind } from '../../../src/domain/checks/check.ts';
import type { Plan } from '../../../src/domain/plan/plan.ts';
import { planRound } from '../../../src/domain/plan/planRound.ts';
import { goodAnswer } from '../../../src/domain/rehearsal/answers.ts';
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
export function walkByVoice(page: Page, answers: Readonly<Record<string, string>>, until: { phase?: string; check?: string }): Promise<VoiceWalk> {
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
          const { phase = '', check = '', ears = '', turn = '' } = run()?.dataset ?? {};
          clearTimeout(stuck);
          stuck = setTimeout(() => {
            observer.disconnect();
            reject(new Error(`stuck at ${phase} ${check} (ears ${ears}): ${run()?.innerText.slice(0, 400)}`));
          }, 15_000);
          if (phase === goal.phase || (goal.check !== undefined && check === goal.check && phase === 'asking')) {
            clearTimeout(stuck);
            observer.disconnect();
            resolve({ asked, phase });
            return;
          }
          if (ears !== 'listening') return;
          const mark = `${phase} ${check} ${turn}`;
          if (mark === lastSpoken) return;
          lastSpoken = mark;
          setTimeout(() => {
            if (phase === 'briefing') return speak('start');
            if (phase === 'confirming') return speak('yes');
            if (phase === 'wrap-up') return speak('done');
            if (phase === 'asking' || phase === 'keeping') {
              asked.push(check);
              speak(words[check] ?? 'next');
            }
          }, 0);
        };
        const observer = new MutationObserver(look);
        observer.observe(root as HTMLElement, { subtree: true, childList: true, characterData: true, attributes: true });
        look();
      }),
    { answers, until },
  );
}
