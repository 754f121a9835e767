/** What something comes to, as a shape and a word. The shapes differ in outline, so that no color is needed to tell them apart. */
import type { ReactNode } from 'react';
import type { Outcome } from '../../domain/checks/outcome.ts';

export type MarkOutcome = Outcome | 'open' | 'skipped' | 'not-cleared';

const WORDS: Readonly<Record<MarkOutcome, string>> = {
  ok: 'OK',
  watch: 'Watch',
  fix: 'Fix',
  hold: 'Hold',
  open: 'Open',
  skipped: 'Skipped',
  'not-cleared': 'Not cleared',
};

/** The one word for an outcome, wherever it is shown. */
export function outcomeWord(outcome: MarkOutcome): string {
  return WORDS[outcome];
}

/**
 * Round and full when all is well; the worse it is, the more corners and the heavier the figure. `open` and `skipped` are
 * broken outlines: nothing was seen.
 */
const SHAPES: Readonly<Record<MarkOutcome, ReactNode>> = {
  ok: (
    <>
      <circle cx="16" cy="16" r="14" fill="currentColor" />
      <circle cx="16" cy="16" r="5.5" fill="var(--paper)" />
    </>
  ),
  watch: (
    <>
      <path d="M3 26 16 4l13 22Z" fill="none" stroke="currentColor" strokeWidth="4" strokeLinejoin="round" />
      <path d="M10.5 21.5h11" stroke="currentColor" strokeWidth="4" />
    </>
  ),
  fix: (
    <>
      <path d="M16 1 31 16 16 31 1 16Z" fill="currentColor" />
      <path d="M9 16h14" stroke="var(--paper)" strokeWidth="4.5" />
    </>
  ),
  hold: (
    <>
      <path d="M10 1h12l9 9v12l-9 9H10l-9-9V10Z" fill="currentColor" />
      <path d="M8 12.5h16M8 19.5h16" stroke="var(--paper)" strokeWidth="4" />
    </>
  ),
  open: <circle cx="16" cy="16" r="13" fill="none" stroke="currentColor" strokeWidth="4" strokeDasharray="6.2 4" />,
  skipped: (
    <>
      <path d="M3 22V10h6M23 10h6v12" fill="none" stroke="currentColor" strokeWidth="4" />
      <path d="M9 28c0-8 14-8 14 0" fill="none" stroke="currentColor" strokeWidth="4" transform="rotate(180 16 25)" />
    </>
  ),
  'not-cleared': (
    <>
      <path d="M10 3h12l7 7v12l-7 7H10l-7-7V10Z" fill="none" stroke="currentColor" strokeWidth="4" strokeDasharray="11 5" />
      <path d="M16 9v9M16 21.5v3" stroke="currentColor" strokeWidth="4" />
    </>
  ),
};

export interface OutcomeMarkProps {
  readonly outcome: MarkOutcome;
  /** Shown instead of the usual word, such as a full verdict. */
  readonly word?: string;
  readonly size?: 'small' | 'large';
  /** Shape alone, for where the word stands beside it anyway; the word is still read aloud. */
  readonly bare?: boolean;
}

export function OutcomeMark({ outcome, word = WORDS[outcome], size = 'small', bare = false }: OutcomeMarkProps) {
  const side = size === 'large' ? 56 : 28;
  return (
    <span className={`outcome ${outcome} ${size}`}>
      <svg viewBox="0 0 32 32" width={side} height={side} aria-hidden="true" focusable="false">
        {SHAPES[outcome]}
      </svg>
      <span className={bare ? 'unseen' : 'word'}>{word}</span>
    </span>
  );
}
