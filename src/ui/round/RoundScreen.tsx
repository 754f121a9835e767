/**
 * The round: one check fills the screen. A view comes in, requests go out; whatever is said is shown, and every step can be
 * done with a mitten, with keys, with a two-button clicker (see `keys.ts`) or by voice.
 */
import { useEffect, useLayoutEffect, useReducer, useRef, useState } from 'react';
import type { PlannedCheck } from '../../domain/plan/plan.ts';
import type { Answer } from '../../domain/round/entry.ts';
import type { RoundRequest, RoundView } from '../../domain/round/view.ts';
import { HoldButton } from '../parts/HoldButton.tsx';
import { AnswerBoard, needsDigits } from './AnswerBoard.tsx';
import { Briefing, BriefingFacts } from './Briefing.tsx';
import {
  type Board,
  type BoardAction,
  boardAfter,
  enteredCount,
  enteredDate,
  enteredReading,
  mayType,
  newBoard,
  type Scale,
  scaleOf,
} from './board.ts';
import { CheckList } from './CheckList.tsx';
import { Complete, CompleteFacts } from './Complete.tsx';
import { Confirming } from './Confirming.tsx';
import { keyMeaning, type LocalAction, type Panel } from './keys.ts';
import { MorePanel } from './MorePanel.tsx';
import { NotePanel } from './NotePanel.tsx';
import { usePressGate } from './pressGate.ts';
import { Question } from './Question.tsx';
import { RoundHeader } from './RoundHeader.tsx';
import { markedIn, movedMark, ringOf } from './ring.ts';
import { Said } from './Said.tsx';
import { SkipPanel } from './SkipPanel.tsx';
import { Tile } from './Tile.tsx';
import { WrapUp, WrapUpFacts } from './WrapUp.tsx';

export interface RoundScreenProps {
  readonly view: RoundView;
  /** Epoch milliseconds, for the countdowns. */
  readonly now: number;
  readonly display: 'us' | 'metric';
  readonly onRequest: (request: RoundRequest) => void;
  /** Back to the home screen; the round can be resumed. */
  readonly onLeave: () => void;
  /** The page of this round. */
  readonly onOpenRound: () => void;
  /** A picture was taken for the check of this key, or for the round. Without it none is offered. */
  readonly onPhoto?: (picture: File, key: string | null) => void;
}

interface Local {
  /** The check that the board belongs to. */
  readonly key: string | null;
  readonly board: Board;
  readonly scale: Scale | null;
}

export function RoundScreen(props: RoundScreenProps) {
  const { now, display, onRequest, onLeave, onOpenRound, onPhoto } = props;
  const view = useSettledView(props.view);
  const [openPanel, setPanel] = useState<Panel>(null);
  const [panelFor, setPanelFor] = useState(placeOf(view));
  const [local, dispatch] = useReducer(localAfter, view, (first) => localFor(first, display));
  const root = useRef<HTMLDivElement>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  /** Always there: the round may go on, by voice, while the device's camera is open. */
  const camera = useRef<HTMLInputElement>(null);
  const pictureFor = useRef<string | null>(null);
  /** The step that was taken last, until the mark leaves it; and where the mark was before it went to "keep". */
  const stepTaken = useRef<Element | null>(null);
  const cameFrom = useRef<Element | null>(null);

  // Another check or phase: what was open or half entered belonged to the one before.
  const place = placeOf(view);
  if (panelFor !== place) {
    setPanelFor(place);
    setPanel(null);
  }
  const panel = panelFor === place ? openPanel : null;
  const key = view.current?.key ?? null;
  if (local.key !== key) dispatch({ type: 'reset', to: localFor(view, display) });
  const { board, scale } = local.key === key ? local : localFor(view, display);

  const screen = `${place}/${panel ?? ''}`;
  const gate = usePressGate(place, panel ?? '');
  const ask = (request: RoundRequest) => {
    // While an entry is being written a second one would be about the wrong check.
    if (props.view.phase !== 'keeping') onRequest(request);
  };

  const act = (action: LocalAction) => {
    const ring = root.current ? ringOf(root.current) : [];
    const focused = document.activeElement;
    switch (action.type) {
      case 'press': {
        const own = focused instanceof HTMLButtonElement && root.current?.contains(focused) ? focused : markedIn(ring, focused);
        own?.click();
        // A value that was confirmed is kept with the next press.
        if (own?.dataset.part === 'value') root.current?.querySelector<HTMLElement>('[data-part="keep"]')?.focus();
        return;
      }
      case 'mark':
        movedMark(ring, focused, action.by)?.focus();
        return;
      case 'mark-on': {
        const keep = ring.find((element) => element.dataset.part === 'keep');
        if (keep && focused !== null && focused === stepTaken.current) {
          cameFrom.current = focused;
          stepTaken.current = null;
          keep.focus();
          return;
        }
        movedMark(ring, focused === keep ? (cameFrom.current ?? focused) : focused, 1)?.focus();
        cameFrom.current = null;
        return;
      }
      case 'step':
        dispatch({ type: 'board', action });
        return;
      case 'digit':
        if (view.current && mayType(view.current.expects, board.typed, action.digit)) dispatch({ type: 'board', action });
        return;
      case 'erase':
        dispatch({ type: 'board', action });
        return;
      case 'keep': {
        const entered = view.current ? enteredFor(view.current, board, scale) : null;
        if (entered?.ok && gate.pass()) ask({ type: 'answer', answer: entered.answer, via: 'key' });
        return;
      }
      case 'open':
        setPanel(action.panel);
        return;
      case 'nothing':
        return;
    }
  };
  // The handler sees the latest view without being put up anew for each.
  const onKey = useRef<(event: KeyboardEvent) => void>(() => {});
  useLayoutEffect(() => {
    onKey.current = (event) => {
      const target = event.target instanceof HTMLElement ? event.target : null;
      const inText = target?.matches('textarea, input:not([type="file"]), select') ?? false;
      const meaning = keyMeaning(
        { key: event.key, modified: event.ctrlKey || event.altKey || event.metaKey, repeat: event.repeat },
        { view, panel, inText, typed: board.typed !== '' },
      );
      const hasOwnEnter = target?.matches('input, select, a[href], summary') ?? false;
      if (meaning === null || (hasOwnEnter && (event.key === 'Enter' || event.key === ' '))) return;
      event.preventDefault();
      gate.via.current = 'key';
      if (root.current) root.current.dataset.by = 'key';
      if (meaning.kind === 'local') act(meaning.action);
      else if (isFree(meaning.request) || gate.pass()) {
        ask(meaning.request);
        if (meaning.request.type === 'command' && panel === 'more') setPanel(null);
      }
    };
  });
  useEffect(() => {
    const listener = (event: KeyboardEvent) => onKey.current(event);
    window.addEventListener('keydown', listener);
    return () => window.removeEventListener('keydown', listener);
  }, []);

  // biome-ignore lint/correctness/useExhaustiveDependencies: the heading takes the focus whenever another screen is shown
  useEffect(() => {
    heading.current?.focus({ preventScroll: true });
    stepTaken.current = null;
    cameFrom.current = null;
    if (root.current) root.current.scrollTop = 0;
    window.scrollTo(0, 0);
  }, [screen]);

  const via = () => gate.via.current;
  const command = (name: Extract<RoundRequest, { type: 'command' }>['command']) => {
    ask({ type: 'command', command: name, via: via() });
    if (name !== 'louder' && name !== 'quieter') setPanel(null);
  };
  const answer = (given: Answer) => ask({ type: 'answer', answer: given, via: via() });
  const go = (to: string) => {
    setPanel(null);
    ask({ type: 'go', key: to });
  };
  const skip = (reason: string) => {
    setPanel(null);
    ask({ type: 'skip', reason, via: via() });
  };
  const note = (text: string, finding: boolean) => {
    setPanel(null);
    ask({ type: 'note', text, finding, via: via() });
  };
  const picture = () => {
    pictureFor.current = key;
    camera.current?.click();
  };
  const leaveNoting = () => {
    setPanel(null);
    if (view.phase === 'noting' && key !== null) ask({ type: 'go', key });
  };

  // A board of digits needs the whole height; the tools are then behind "more".
  const typesOnly = view.current !== null && needsDigits(view.current.expects) && view.phase === 'asking';
  const { facts, answers } = contents();
  const tools = panel === null && view.phase !== 'complete' && view.phase !== 'keep-failed' && !typesOnly;

  return (
    // The root hears presses before any button does, to let them pass or not; it is no control itself.
    <div
      ref={root}
      className={`round phase-${view.phase} ${panel ? `panel-${panel}` : ''}`}
      onPointerDownCapture={(event) => {
        gate.pointerDown(event.pointerId, event.isPrimary);
        if (root.current) root.current.dataset.by = 'pointer';
      }}
      onPointerUpCapture={(event) => gate.pointerUp(event.pointerId)}
      onPointerCancelCapture={(event) => gate.pointerUp(event.pointerId)}
      onClickCapture={(event) => {
        const target = event.target instanceof Element ? event.target.closest('button') : null;
        if (!target || target.dataset.quick !== undefined) {
          if (target?.dataset.part === 'step') stepTaken.current = target;
          return;
        }
        if (gate.pass()) return;
        event.preventDefault();
        event.stopPropagation();
      }}
    >
      {onPhoto && (
        <input
          ref={camera}
          type="file"
          accept="image/*"
          capture="environment"
          hidden
          onChange={(event) => {
            const taken = event.currentTarget.files?.[0];
            // The same picture may be chosen again.
            event.currentTarget.value = '';
            if (!taken) return;
            setPanel(null);
            onPhoto(taken, pictureFor.current);
          }}
        />
      )}
      <RoundHeader view={view} now={now} />
      <main className="round-main">
        <div className="round-facts">{facts}</div>
        <div className="round-answers">{answers}</div>
      </main>
      {tools && (
        <nav className="round-tools" aria-label="This round">
          {view.phase === 'briefing' ? (
            <Tile ring={60} onPress={onLeave}>
              Not now
            </Tile>
          ) : view.phase === 'held' ? (
            <Tile ring={60} onPress={onLeave}>
              Home
            </Tile>
          ) : (
            <Tile ring={60} onPress={() => command('back')}>
              Back
            </Tile>
          )}
          <Tile ring={61} onPress={() => command('repeat')}>
            Say again
          </Tile>
          {view.phase === 'asking' || view.phase === 'confirming' || view.phase === 'noting' ? (
            <Tile ring={62} onPress={() => setPanel('more')}>
              More
            </Tile>
          ) : view.phase === 'briefing' ? (
            <Tile ring={62} onPress={() => ask({ type: 'listen', on: view.ears.state === 'off' })}>
              {view.ears.state === 'off' ? 'Mic on' : 'Mic off'}
            </Tile>
          ) : (
            <Tile ring={62} onPress={() => setPanel('list')}>
              All checks
            </Tile>
          )}
        </nav>
      )}
    </div>
  );

  function contents() {
    const title = (text: string) => (
      <h1 ref={heading} tabIndex={-1} className="round-title">
        {text}
      </h1>
    );
    const said = <Said view={view} />;
    if (panel === 'list') {
      return {
        facts: title('All checks'),
        answers: (
          <CheckList
            view={view}
            onGo={go}
            onClose={() => setPanel(null)}
            onWrapUp={() => {
              setPanel(null);
              if (view.phase === 'asking') ask({ type: 'finish' });
            }}
          />
        ),
      };
    }
    if (panel === 'skip') {
      return { facts: title('Why is it skipped?'), answers: <SkipPanel onSkip={skip} onClose={() => setPanel(null)} /> };
    }
    if (panel === 'more') {
      return {
        facts: (
          <>
            {title('More')}
            {!typesOnly && said}
          </>
        ),
        answers: (
          <MorePanel
            ears={view.ears}
            onCommand={command}
            onListen={(on) => ask({ type: 'listen', on })}
            onOpen={setPanel}
            onPicture={onPhoto ? picture : null}
            isWhole={typesOnly}
          />
        ),
      };
    }
    if (view.phase === 'noting' && view.taking === 'reason') {
      return {
        facts: (
          <>
            {title('Why is it skipped?')}
            {said}
          </>
        ),
        answers: <SkipPanel onSkip={skip} onClose={leaveNoting} />,
      };
    }
    if (panel === 'note' || view.phase === 'noting') {
      return {
        facts: (
          <>
            {title('Make a note')}
            {said}
          </>
        ),
        answers: <NotePanel onNote={note} onClose={leaveNoting} partial={view.partial} onPicture={onPhoto ? picture : null} />,
      };
    }
    switch (view.phase) {
      case 'briefing':
        return {
          facts: (
            <>
              {title(view.round.plan.unit.name)}
              {said}
              <BriefingFacts view={view} />
            </>
          ),
          answers: <Briefing view={view} onBegin={(people) => ask({ type: 'begin', people })} />,
        };
      case 'held':
        return {
          facts: (
            <>
              {title('Holding')}
              {said}
              <p className="lead">Everything so far is kept. The round goes on at exactly this check.</p>
            </>
          ),
          answers: (
            <div className="board state-board">
              <Tile ring={0} main onPress={() => command('resume')}>
                Carry on
              </Tile>
            </div>
          ),
        };
      case 'keep-failed':
        return {
          facts: (
            <>
              {title('Not kept')}
              {said}
              <p className="lead">Your answer is still here, but it could not be stored. Nothing was confirmed.</p>
            </>
          ),
          answers: (
            <div className="board state-board">
              <Tile ring={0} main onPress={() => ask({ type: 'retry-keep' })}>
                Try again
              </Tile>
              <HoldButton label="Leave without this answer" ring={1} className="tile" onHeld={onLeave} />
            </div>
          ),
        };
      case 'confirming':
        return {
          facts: (
            <>
              {title(view.saying === '' ? 'Is that right?' : view.saying)}
              <Said view={{ ...view, saying: '' }} />
            </>
          ),
          answers: (
            <Confirming
              offers={view.offers}
              onYes={() => ask({ type: 'confirm', yes: true, via: via() })}
              onNo={() => ask({ type: 'confirm', yes: false, via: via() })}
              onAnswer={answer}
            />
          ),
        };
      case 'wrap-up':
        return {
          facts: (
            <>
              {title(view.lines.some((line) => line.status === 'open') ? 'Not finished yet' : 'Finish the round?')}
              {said}
              <WrapUpFacts view={view} onGo={go} />
            </>
          ),
          answers: (
            <WrapUp
              view={view}
              now={now}
              onTakeLeft={() => ask({ type: 'confirm', yes: false, via: via() })}
              onTakeTimed={() => command('next')}
              onFinish={() => ask({ type: 'finish' })}
            />
          ),
        };
      case 'complete':
        return {
          facts: (
            <>
              {title('Round complete')}
              {said}
              <CompleteFacts view={view} />
            </>
          ),
          answers: <Complete onOpenRound={onOpenRound} onLeave={onLeave} onRepeat={() => command('repeat')} />,
        };
      default:
        return view.current === null
          ? { facts: title(view.round.plan.unit.name), answers: null }
          : {
              facts: (
                <>
                  <Question check={view.current} before={view.before} brief={typesOnly || panel === 'digits'} ref={heading} />
                  <Said view={view} shown={shownLines(view.current)} />
                </>
              ),
              answers: (
                <AnswerBoard
                  check={view.current}
                  scale={scale}
                  board={board}
                  digits={panel === 'digits'}
                  onDigits={(open) => setPanel(open ? 'digits' : null)}
                  onBoard={(action) => dispatch({ type: 'board', action })}
                  onAnswer={answer}
                  onSkip={() => setPanel('skip')}
                  onMore={() => setPanel('more')}
                />
              ),
            };
    }
  }
}

/** Requests that change nothing that was answered, and may follow one another at once. */
function isFree(request: RoundRequest): boolean {
  return request.type === 'command' && (request.command === 'louder' || request.command === 'quieter');
}

/** A write takes milliseconds: meanwhile the screen stays as it was. */
function useSettledView(view: RoundView): RoundView {
  const [settled, setSettled] = useState(view);
  if (view.phase !== 'keeping' && view !== settled) setSettled(view);
  return view.phase === 'keeping' ? { ...settled, readBack: view.readBack, ears: view.ears, saying: view.saying } : view;
}

/** What the question already shows of what is said. */
function shownLines({ lines }: PlannedCheck): readonly string[] {
  return [lines.caution ?? '', lines.ask];
}

const placeOf = (view: RoundView) => `${view.phase}/${view.current?.key ?? ''}`;

type LocalEvent = { readonly type: 'reset'; readonly to: Local } | { readonly type: 'board'; readonly action: BoardAction };

function localAfter(local: Local, event: LocalEvent): Local {
  if (event.type === 'reset') return event.to;
  return { ...local, board: boardAfter(local.board, event.action, local.scale) };
}

function localFor(view: RoundView, display: 'us' | 'metric'): Local {
  const { current } = view;
  const scale = current?.expects.kind === 'reading' ? scaleOf(current.expects, display, view.beforeValue ?? null) : null;
  return { key: current?.key ?? null, scale, board: newBoard(scale?.start ?? 0) };
}

function enteredFor(check: PlannedCheck, board: Board, scale: Scale | null) {
  const { expects } = check;
  if (expects.kind === 'reading') return scale ? enteredReading(board, scale) : null;
  if (expects.kind === 'count') return enteredCount(board.typed, expects);
  if (expects.kind === 'date') return enteredDate(board.typed, expects);
  return null;
}
