/** What is said, word for word; what is being heard; what was kept last. */
import type { RoundView } from '../../domain/round/view.ts';
import { OutcomeMark } from '../parts/OutcomeMark.tsx';

export function Said({ view }: { readonly view: Pick<RoundView, 'saying' | 'speaking' | 'partial' | 'readBack'> }) {
  const { saying, speaking, partial, readBack } = view;
  return (
    <div className="said">
      <p className={`saying ${speaking ? 'speaking' : ''}`} role="status" aria-live="polite">
        {saying}
      </p>
      {partial !== null && partial !== '' && (
        <p className="partial">
          <span className="unseen">Heard so far: </span>“{partial} …”
        </p>
      )}
      {readBack && (
        <p className="read-back">
          <span className="read-back-label">Kept</span>
          <OutcomeMark outcome={readBack.outcome} />
          <span>{readBack.text}</span>
        </p>
      )}
    </div>
  );
}
