/** What an exchange is about. Worked out by pure functions (`topics.ts`), carried out by the exchange machine. */
import type { Hearing } from '../language/hearing.ts';
import type { Command } from '../language/meaning.ts';
import type { ListenRequest } from '../voice/ports.ts';
import type { Answer } from './entry.ts';
import type { Keeping, Step } from './step.ts';

export type Via = 'voice' | 'button' | 'key';

export interface Heard {
  readonly hearing: Hearing;
  /** How often this was asked already. */
  readonly asked: number;
  /** A yes or no is awaited, or a new value. */
  readonly confirming: boolean;
  /** The hearing before this one, where nothing came of it but a question. */
  readonly faint: Hearing | null;
}

/** The matter at hand, worked out by pure functions of the domain. */
export interface ExchangeTopic {
  /** Spoken first. */
  readonly opening: readonly string[];
  readonly request: ListenRequest;
  /** What is listened for when the reason of a skip is asked. */
  readonly reasonRequest: ListenRequest;
  /** How long the work usually takes before an answer comes. */
  readonly patienceMs: number;
  /** Spoken when nothing is heard for that long, each once; then the tool waits in silence. */
  readonly reminders: readonly string[];
  readonly consider: (heard: Heard) => Step;
  /** A press is certain: it needs no belief, only judgement. */
  readonly press: (answer: Answer, via: 'button' | 'key') => Step;
  /** Lines for a command that leaves the exchange where it is; null where the round must act. */
  readonly speakFor: (command: Command) => readonly string[] | null;
  /** Asked when speech was heard and nothing in it fitted; more helpful each time. */
  readonly askAgain: (asked: number) => string;
  /** Null where there is nothing to skip. */
  readonly skip: ((reason: string, hearing: Hearing | null, via: Via) => Keeping) | null;
  readonly note: (text: string | null, finding: boolean, hearing: Hearing | null, via: Via) => Keeping;
  /** A picture that was taken and whose bytes are kept already. */
  readonly photo: (photo: string, via: Via) => Keeping;
}
