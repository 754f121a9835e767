/** What a hearing or a press leads to. The exchange machine carries it out; `consider.ts` works it out. */
import type { Command } from '../language/meaning.ts';
import type { Answer, EntryDraft } from './entry.ts';

/** Entries to keep and what to say once they are kept. */
export interface Keeping {
  readonly drafts: readonly EntryDraft[];
  readonly readBack: readonly string[];
}

/** An answer that the person may take with "yes" or a button. */
export interface Offer extends Keeping {
  readonly label: string;
  readonly answer: Answer | null;
}

export type Step =
  | ({ readonly kind: 'keep' } & Keeping)
  /** Ask, and keep the first offer on "yes"; a new value is considered afresh. */
  | { readonly kind: 'confirm'; readonly question: string; readonly offers: readonly Offer[] }
  | { readonly kind: 'again'; readonly question: string }
  | { readonly kind: 'command'; readonly command: Command; readonly text: string | null }
  | { readonly kind: 'yes-no'; readonly yes: boolean }
  /** From now on questions are asked so. */
  | { readonly kind: 'style'; readonly style: 'full' | 'terse' }
  /** The camera is asked for. */
  | { readonly kind: 'picture' }
  /** Not for the app: listen on, without a sound. */
  | { readonly kind: 'ignore' };
