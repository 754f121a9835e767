import { useState } from 'react';
import type { Finding } from '../../domain/history/findings.ts';
import { capitalized } from '../../domain/trend/wording.ts';
import { OutcomeMark } from '../parts/OutcomeMark.tsx';
import { MendedForm, type Mending } from './MendedForm.tsx';
import { Picture, type PictureUrl } from './Picture.tsx';
import { Time } from './Time.tsx';

/** What must be mended, as against what is fine today and is to be looked at again. */
export function sortedFindings(findings: readonly Finding[]): {
  readonly toMend: readonly Finding[];
  readonly toWatch: readonly Finding[];
} {
  return {
    toMend: findings.filter(({ outcome }) => outcome !== 'watch'),
    toWatch: findings.filter(({ outcome }) => outcome === 'watch'),
  };
}

export interface FindingListProps {
  readonly findings: readonly Finding[];
  readonly roundHref: (round: string) => string;
  /** Null where nothing can be said to be mended, as on a printed report. */
  readonly onMended: ((mending: Mending) => void) | null;
  readonly photoUrl: PictureUrl;
}

/** Open findings, each until someone says that it was mended. */
export function FindingList({ findings, roundHref, onMended, photoUrl }: FindingListProps) {
  const [mending, setMending] = useState<string | null>(null);
  return (
    <ul className="look-findings">
      {findings.map((finding) => (
        <li key={finding.id}>
          <div className="look-finding-head">
            {finding.outcome === null ? <span className="look-tag">Note</span> : <OutcomeMark outcome={finding.outcome} />}
            <strong>{capitalized(finding.title)}</strong>
          </div>
          {finding.text && <p>{finding.text}</p>}
          {finding.mend && <p>{finding.mend}</p>}
          {finding.photo && <Picture id={finding.photo} what={finding.title} photoUrl={photoUrl} onDelete={null} />}
          <p className="quiet">
            Since{' '}
            <a href={roundHref(finding.round)}>
              <Time at={finding.since} />
            </a>
            {finding.seen > 1 && <>, seen in {finding.seen} rounds</>}
          </p>
          {onMended &&
            (mending === finding.id ? (
              <MendedForm
                finding={finding.id}
                title={finding.title}
                onCancel={() => setMending(null)}
                onMended={(done) => {
                  setMending(null);
                  onMended(done);
                }}
              />
            ) : (
              <button type="button" className="slab screen-only" onClick={() => setMending(finding.id)}>
                Mended<span className="unseen">: {finding.title}</span>
              </button>
            ))}
        </li>
      ))}
    </ul>
  );
}
