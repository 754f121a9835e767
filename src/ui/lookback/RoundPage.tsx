/** A round played back in the order in which it happened. */

import { type ReactNode, useState } from 'react';
import { sheetOf } from '../../domain/history/sheet.ts';
import type { TimelineItem } from '../../domain/history/timeline.ts';
import type { Round } from '../../domain/round/entry.ts';
import { capitalized } from '../../domain/trend/wording.ts';
import type { Display } from '../../domain/voice/settings.ts';
import { HeardWords } from '../parts/HeardWords.tsx';
import { HoldButton } from '../parts/HoldButton.tsx';
import { type MarkOutcome, OutcomeMark } from '../parts/OutcomeMark.tsx';
import { ROUND_NAMES } from '../parts/roundNames.ts';
import { DemoMark } from './DemoMark.tsx';
import { LimitList } from './LimitList.tsx';
import { NotACertificate } from './NotACertificate.tsx';
import { Picture, type PictureUrl } from './Picture.tsx';
import { RoundSheet } from './RoundSheet.tsx';
import { Time } from './Time.tsx';

export interface RoundPageProps {
  readonly round: Round;
  readonly complete: boolean;
  readonly verdict: { readonly outcome: MarkOutcome; readonly sentences: readonly string[] };
  readonly timeline: readonly TimelineItem[];
  readonly display: Display;
  readonly unitHref: string;
  readonly reportHref: string;
  /** Address of a kept clip or photo; null once it is gone. */
  readonly clipUrl: (id: string) => Promise<string | null>;
  readonly photoUrl: PictureUrl;
  readonly onDelete: () => void;
  /** Takes the picture away for good; that there was one stays in the round. @returns whether it is gone */
  readonly onDeletePhoto: (id: string) => Promise<boolean>;
  readonly onPrint: () => void;
}

export function RoundPage(props: RoundPageProps) {
  const { round, complete, verdict, timeline, display, unitHref, reportHref, onDelete, onPrint } = props;
  const [problemsOnly, setProblemsOnly] = useState(false);
  const shown = problemsOnly ? timeline.filter(isRemarkable) : timeline;
  const { unknowns } = round.plan;
  return (
    <main className="page look-page look-playback">
      <header>
        <p className="screen-only">
          <a href={unitHref}>{round.plan.unit.name}</a>
        </p>
        <h1>
          <span className="print-only">{round.plan.unit.name}: </span>
          {ROUND_NAMES[round.plan.round]}, <Time at={round.startedAt} form="day-time" />
        </h1>
        <DemoMark demo={round.demo} />
        <OutcomeMark outcome={complete ? verdict.outcome : 'not-cleared'} size="large" />
        {!complete && (
          <p>
            <strong>Not complete: it clears nothing.</strong>
          </p>
        )}
        {verdict.sentences.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
        <p className="look-actions screen-only">
          <a className="slab" href={reportHref}>
            Report
          </a>
          <button type="button" className="slab" onClick={onPrint}>
            Print
          </button>
          <button type="button" className="slab" aria-pressed={problemsOnly} onClick={() => setProblemsOnly(!problemsOnly)}>
            Only what was not good
          </button>
        </p>
      </header>
      {unknowns.length > 0 && (
        <section aria-labelledby="look-unknowns">
          <h2 id="look-unknowns">Not known at the time</h2>
          <ul>
            {unknowns.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </section>
      )}
      <RoundSheet sheet={sheetOf(round, timeline)} display={display} />
      <section className="screen-only" aria-labelledby="look-playback">
        <h2 id="look-playback">In order of time</h2>
        {shown.length === 0 && <p>Everything was good.</p>}
        <ol className="look-timeline">
          {shown.map((item) => (
            <Item
              key={item.id}
              item={item}
              display={display}
              clipUrl={props.clipUrl}
              photoUrl={props.photoUrl}
              onDeletePhoto={props.onDeletePhoto}
            />
          ))}
        </ol>
      </section>
      <NotACertificate />
      <p className="screen-only">
        <HoldButton label="Delete this round" onHeld={onDelete}>
          Delete this round
        </HoldButton>
      </p>
    </main>
  );
}

function isRemarkable(item: TimelineItem): boolean {
  return (item.outcome !== null && item.outcome !== 'ok') || item.finding || item.standing === 'taken-back';
}

const STANDINGS = {
  'in-force': null,
  correction: 'Correction: this counts.',
  replaced: 'Corrected later: this does not count.',
  'taken-back': 'Taken back: this does not count.',
} as const;

interface ItemProps extends Pick<RoundPageProps, 'clipUrl' | 'photoUrl' | 'onDeletePhoto'> {
  readonly item: TimelineItem;
  readonly display: Display;
}

function Item({ item, display, clipUrl, photoUrl, onDeletePhoto }: ItemProps) {
  const isVoid = item.standing === 'replaced' || item.standing === 'taken-back';
  const standing = item.standing === null ? null : STANDINGS[item.standing];
  return (
    <li className={isVoid ? 'look-item void' : 'look-item'}>
      {item.arrivedAt && <h3>{item.arrivedAt}</h3>}
      <p className="look-item-head">
        <Time at={item.at} form="clock" />
        {item.check && <strong>{capitalized(item.check.lines.name)}</strong>}
        {item.finding && <span className="look-tag">Finding</span>}
        {item.outcome && <OutcomeMark outcome={item.outcome} />}
      </p>
      <dl className="look-facts">
        <Fact name="Asked">{item.asked}</Fact>
        <Fact name="Heard">{item.heard && <HeardText heard={item.heard} />}</Fact>
        <Fact name={item.check && item.outcome ? 'Understood' : 'Happened'}>{item.understood}</Fact>
        <Fact name="By">{item.by}</Fact>
        <Fact name="Because">{item.because.length > 0 ? item.because.join(' ') : null}</Fact>
        <Fact name="Judged">
          {item.judgement && (item.judgement.say !== '' || item.judgement.todo !== null)
            ? [item.judgement.say, item.judgement.todo].filter((part) => part !== null && part !== '').join(' ')
            : null}
        </Fact>
        {item.judgement?.facts.map((fact) => (
          <Fact key={fact.label} name={fact.label}>
            {fact.text}
          </Fact>
        ))}
        <Fact name="Limits">{item.limits.length > 0 ? <LimitList limits={item.limits} display={display} /> : null}</Fact>
      </dl>
      {standing && <p className="look-standing-word">{standing}</p>}
      {item.clip && <Clip id={item.clip} what={item.check?.lines.name ?? 'note'} clipUrl={clipUrl} />}
      {item.photo && (
        <Picture
          id={item.photo}
          what={item.check?.lines.name ?? 'the round'}
          photoUrl={photoUrl}
          onDelete={() => onDeletePhoto(item.photo ?? '')}
        />
      )}
    </li>
  );
}

function Fact({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  if (children === null || children === false || children === undefined) return null;
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

function HeardText({ heard }: { readonly heard: NonNullable<TimelineItem['heard']> }) {
  return (
    <>
      <HeardWords words={heard.words} />
      {heard.confidencePercent !== null && <> ({heard.confidencePercent} % sure)</>}
      {heard.alternatives.length > 0 && <> or {heard.alternatives.map((other) => `“${other}”`).join(', ')}</>}
    </>
  );
}

function Clip({
  id,
  what,
  clipUrl,
}: {
  readonly id: string;
  readonly what: string;
  readonly clipUrl: RoundPageProps['clipUrl'];
}) {
  const [url, setUrl] = useState<string | null | undefined>(undefined);
  if (url === null) return <p className="quiet">The clip is no longer kept.</p>;
  if (url !== undefined) {
    // biome-ignore lint/a11y/useMediaCaption: what was heard stands beside it in words
    return <audio className="screen-only" controls autoPlay src={url} aria-label={`What was heard: ${what}`} />;
  }
  return (
    <button type="button" className="slab screen-only" onClick={() => void clipUrl(id).then(setUrl, () => setUrl(null))}>
      Play what was heard<span className="unseen">: {what}</span>
    </button>
  );
}
