/** What is said, word for word; what is being heard; what was kept last. */
import type { RoundView } from '../../domain/round/view.ts';
import { HeardWords } from '../parts/HeardWords.tsx';
import { OutcomeMark } from '../parts/OutcomeMark.tsx';

export interface SaidProps {
  readonly view: Pick<RoundView, 'saying' | 'speaking' | 'partial' | 'readBack'>;
  /** Lines that stand elsewhere on the screen: they are not shown a second time, but a screen reader is told all of it. */
  readonly shown?: readonly string[];
}

export function Said({ view, shown = [] }: SaidProps) {
  const { saying, speaking, partial, readBack } = view;
  const rest = restOf(saying, shown);
  return (
    <div className="said">
      {readBack && (
        <p className="read-back">
          <span className="read-back-label">Kept</span>
          <OutcomeMark outcome={readBack.outcome} />
          <span>{readBack.text}</span>
          {readBack.heard && (
            <span className="read-back-heard">
              <span className="unseen">Heard: </span>
              <HeardWords words={readBack.heard} />
            </span>
          )}
        </p>
      )}
      <p className="unseen" role="status" aria-live="polite">
        {saying}
      </p>
      {rest !== '' && (
        <p className={`saying ${speaking ? 'speaking' : ''}`} aria-hidden="true">
          {rest}
        </p>
      )}
      {partial !== null && partial !== '' && (
        <p className="partial">
          <span className="unseen">Heard so far: </span>“{partial} …”
        </p>
      )}
    </div>
  );
}

/** What is said beyond the lines that are shown anyway, in the same words. */
export function restOf(saying: string, shown: readonly string[]): string {
  return shown
    .filter((line) => line !== '')
    .reduce((rest, line) => rest.replace(line, ' '), saying)
    .replace(/\s+/g, ' ')
    .replace(/^[\s.]+/, '')
    .trim();
}
