/** The check that is asked: caution first, then the question in type that is read at arm's length, then last time's value. */
import type { Ref } from 'react';
import type { PlannedCheck } from '../../domain/plan/plan.ts';
import { label } from './StateBoard.tsx';

/** Longer questions are shown in few words, with the whole of it below. */
const LONGEST_HEADING = 64;
/** Beside a board of digits, or under a caution, there is less room. */
const LONGEST_BRIEF = 40;

export interface QuestionProps {
  readonly check: PlannedCheck;
  readonly before: string | null;
  /** Little room: few words. */
  readonly brief: boolean;
  readonly ref: Ref<HTMLHeadingElement>;
}

export function Question({ check, before, brief, ref }: QuestionProps) {
  const { ask, askTerse, caution } = check.lines;
  const short = ask.length <= (brief || caution !== null ? LONGEST_BRIEF : LONGEST_HEADING);
  return (
    <div className="question">
      {caution !== null && (
        <p className="caution">
          <svg viewBox="0 0 32 32" width="30" height="30" aria-hidden="true" fill="none" stroke="currentColor" strokeWidth="4">
            <path d="M3 5h26v16L16 30 3 21ZM16 9v8M16 20v3" />
          </svg>
          <span>{caution}</span>
        </p>
      )}
      <h1 ref={ref} tabIndex={-1} className="round-title">
        {label(short ? ask : askTerse)}
      </h1>
      {!short && <p className="ask-full">{ask}</p>}
      {before !== null && <p className="before">Last time: {before}</p>}
    </div>
  );
}
