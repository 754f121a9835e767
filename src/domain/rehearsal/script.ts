/**
 * The person of the rehearsal: answers whatever is asked, the way people do, with a few stumbles in fixed places so that a
 * newcomer sees what the tool does with them. Deterministic.
 */
import type { Plan } from '../plan/plan.ts';
import type { ListenRequest } from '../voice/ports.ts';
import { goodAnswer } from './answers.ts';

export interface Line {
  readonly transcript: string;
  readonly afterMs: number;
}

const THINKING_MS = 900;
const WORKING_MS = 1600;

/** What is said instead of the plain answer, once each, at the nth turn of its kind. */
const STUMBLES: Readonly<Record<string, readonly (readonly [turn: number, say: (plain: string) => string])[]>> = {
  reading: [
    [2, (plain) => `uh ${plain}`],
    [4, () => 'why'],
    [6, (plain) => `${plain}, I think`],
  ],
  state: [
    [5, () => 'say again'],
    [12, () => 'hold on a second'],
  ],
};

export interface RehearsalScript {
  /** Asked each time the ears open. */
  answer(request: ListenRequest): Line | null;
}

/**
 * @param plan the rehearsal's own plan
 * @param at epoch milliseconds
 */
export function createRehearsalScript(plan: Plan, at: number): RehearsalScript {
  const turns = new Map<string, number>();
  return {
    answer(request) {
      const { expects, mode } = request;
      if (mode === 'free') return { transcript: 'frayed near the drum', afterMs: WORKING_MS };
      if (mode === 'confirm') return { transcript: confirmation(request), afterMs: THINKING_MS };
      const turn = (turns.get(expects.kind) ?? 0) + 1;
      turns.set(expects.kind, turn);
      const check = plan.checks.find(
        (candidate) => sameQuestion(candidate.expects, request) && candidate.position === request.position,
      );
      const plain = check ? goodAnswer(check, at) : 'next';
      const stumble = STUMBLES[expects.kind]?.find(([when]) => when === turn)?.[1];
      return { transcript: stumble ? stumble(plain) : plain, afterMs: expects.kind === 'reading' ? WORKING_MS : THINKING_MS };
    },
  };
}

/** Start, carry on, done: the word that the call itself offers. */
function confirmation({ expects }: ListenRequest): string {
  if (expects.kind !== 'state') return 'yes';
  if (expects.ok.includes('start')) return 'start';
  if (expects.ok.includes('carry on')) return 'carry on';
  if (expects.ok.includes('done')) return 'done';
  return 'yes';
}

function sameQuestion(expects: ListenRequest['expects'], request: ListenRequest): boolean {
  return JSON.stringify(expects) === JSON.stringify(request.expects);
}
