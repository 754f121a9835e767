/** Whether the app is listening or speaking: a shape and a word. What to do when something is wrong is said beside it. */
import type { ReactNode } from 'react';
import type { EarsView } from '../../domain/round/view.ts';

const WORDS: Readonly<Record<EarsView['state'], string>> = {
  off: 'Microphone off',
  loading: 'Getting ready',
  waiting: 'Not listening yet',
  listening: 'Listening',
  hearing: 'Hearing you',
  denied: 'Microphone not allowed',
  unavailable: 'No voice here',
};

/** Ripples on water: the more of them, the more is heard. A bar across: nothing can be. */
const SHAPES: Readonly<Record<EarsView['state'], ReactNode>> = {
  off: <path d="M6 16h20" />,
  loading: <path d="M16 4v6M16 22v6M4 16h6M22 16h6" />,
  waiting: <circle cx="16" cy="16" r="5" />,
  listening: (
    <>
      <circle cx="16" cy="16" r="4" fill="currentColor" />
      <circle cx="16" cy="16" r="11" />
    </>
  ),
  hearing: (
    <>
      <circle cx="16" cy="16" r="3" fill="currentColor" />
      <circle cx="16" cy="16" r="8" />
      <circle cx="16" cy="16" r="14" />
    </>
  ),
  denied: (
    <>
      <circle cx="16" cy="16" r="11" />
      <path d="M4 28 28 4" />
    </>
  ),
  unavailable: <path d="M5 5l22 22M27 5 5 27" />,
};

const SPEAKING = <path d="M4 12v8h5l7 6V6l-7 6ZM21 11c3 3 3 7 0 10M25 7c6 5 6 13 0 18" />;

export interface EarsMarkProps {
  readonly ears: EarsView;
  /** The app is talking, and does not listen meanwhile. */
  readonly speaking?: boolean;
}

export function EarsMark({ ears, speaking = false }: EarsMarkProps) {
  const talks = speaking && (ears.state === 'waiting' || ears.state === 'listening');
  const percent = ears.state === 'loading' && ears.progress !== null ? ` ${Math.round(ears.progress * 100)} %` : '';
  return (
    <div className={`ears ${talks ? 'speaking' : ears.state}`}>
      <svg viewBox="0 0 32 32" width="28" height="28" aria-hidden="true" fill="none" stroke="currentColor" strokeWidth="3.5">
        {talks ? SPEAKING : SHAPES[ears.state]}
      </svg>
      <span className="word">
        {talks ? 'Speaking' : WORDS[ears.state]}
        {percent}
      </span>
    </div>
  );
}
