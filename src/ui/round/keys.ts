/**
 * Keys of a keyboard or a clicker on the round, as a pure map. Nothing here depends on what has the focus, except that
 * a text field keeps its letters.
 *
 * | key | does |
 * | --- | --- |
 * | PageDown, Enter, Space | press the marked button; at first that is the first answer |
 * | PageUp | move the mark on to the next button (two buttons reach everything: one moves, one presses) |
 * | arrows, Tab | move the mark; on a number, up and down are one step, right and left a big one |
 * | digits, `.` `,` `-` | type the number or the date, Enter keeps it; on a choice, take that one; on an offer, that one |
 * | Backspace | takes back a typed digit |
 * | y, n | yes and no to the question as it is asked; to an offer, to the start and to the end likewise |
 * | s | skip, with a reason (then 1 to 4) |
 * | b, r, u, w | back, say again, undo, where am I |
 * | i, ? | why, help |
 * | h | hold on, carry on |
 * | m, a, l | make a note, all checks, microphone on or off |
 * | + − (no number asked) | louder, quieter |
 * | f | the completion call, when everything was asked |
 * | Escape | close what is open; else the other commands |
 *
 * Many clickers send arrows or `b` and `.` instead of the Page keys: arrows move the mark and `b` goes back, so that they
 * do no harm; `.` counts only while a number is asked.
 */
import type { Expects } from '../../domain/checks/expects.ts';
import type { Answer } from '../../domain/round/entry.ts';
import { SKIP_REASONS } from '../../domain/round/skipReasons.ts';
import type { RoundRequest, RoundView } from '../../domain/round/view.ts';

/** What lies over the check; null: the check itself. */
export type Panel = 'list' | 'skip' | 'note' | 'more' | 'digits' | null;

export interface KeyPress {
  /** `KeyboardEvent.key`. */
  readonly key: string;
  /** Control, Alt or Meta is down: the browser's own, never ours. */
  readonly modified: boolean;
  /** Held down: counts once. */
  readonly repeat: boolean;
}

export interface KeyPlace {
  readonly view: Pick<RoundView, 'phase' | 'current' | 'offers' | 'ears' | 'timers'>;
  readonly panel: Panel;
  /** The focus is in a text field. */
  readonly inText: boolean;
  /** Digits were typed and are not kept yet. */
  readonly typed: boolean;
}

export type LocalAction =
  | { readonly type: 'mark'; readonly by: 1 | -1 }
  /** As `mark` by 1, but from a step that was just taken straight to "keep". */
  | { readonly type: 'mark-on' }
  | { readonly type: 'press' }
  /** One step or a big one, up or down. */
  | { readonly type: 'step'; readonly by: 1 | -1 | 'big' | '-big' }
  | { readonly type: 'digit'; readonly digit: string }
  | { readonly type: 'erase' }
  | { readonly type: 'keep' }
  | { readonly type: 'open'; readonly panel: Panel }
  /** Ours, but without an effect: a key that is held down counts once. */
  | { readonly type: 'nothing' };

export type KeyMeaning =
  | { readonly kind: 'request'; readonly request: RoundRequest }
  | { readonly kind: 'local'; readonly action: LocalAction };

const request = (what: RoundRequest): KeyMeaning => ({ kind: 'request', request: what });
const local = (action: LocalAction): KeyMeaning => ({ kind: 'local', action });
const command = (name: Extract<RoundRequest, { type: 'command' }>['command']): KeyMeaning =>
  request({ type: 'command', command: name, via: 'key' });

/**
 * What a key means here and now.
 * @returns null when the key is not ours: the browser then does what it does with it
 */
export function keyMeaning(press: KeyPress, place: KeyPlace): KeyMeaning | null {
  if (press.modified) return null;
  if (place.inText) return press.key === 'Escape' ? local({ type: 'open', panel: null }) : null;
  const meaning =
    panelKey(press.key, place) ?? numberKey(press.key, place) ?? phaseKey(press.key, place) ?? commonKey(press.key, place);
  // A held key repeats by itself; only a step and a move may.
  if (press.repeat && !(meaning?.kind === 'local' && (meaning.action.type === 'step' || meaning.action.type === 'mark'))) {
    return meaning === null ? null : local({ type: 'nothing' });
  }
  return meaning;
}

/** Whether digits go to a number or a date that is being entered. */
export function takesDigits(place: Pick<KeyPlace, 'view' | 'panel'>): boolean {
  const { view, panel } = place;
  if (view.phase !== 'asking' || (panel !== null && panel !== 'digits')) return false;
  const kind = view.current?.expects.kind;
  return kind === 'reading' || kind === 'date' || kind === 'count';
}

function panelKey(key: string, { panel }: KeyPlace): KeyMeaning | null {
  if (panel === null) return null;
  if (key === 'Escape') return local({ type: 'open', panel: null });
  if (panel === 'skip') {
    const reason = SKIP_REASONS.options[Number(key) - 1];
    if (/^[1-9]$/.test(key) && reason) return request({ type: 'skip', reason: reason.label, via: 'key' });
  }
  return null;
}

function numberKey(key: string, place: KeyPlace): KeyMeaning | null {
  if (!takesDigits(place)) return null;
  const expects = place.view.current?.expects;
  if (/^[0-9]$/.test(key)) return local({ type: 'digit', digit: key });
  if (key === 'Backspace' || key === 'Delete') return local({ type: 'erase' });
  if (expects?.kind === 'reading') {
    if (key === '.' || key === ',') return local({ type: 'digit', digit: '.' });
    if (key === '-' && expects.min < 0) return local({ type: 'digit', digit: '-' });
    if (place.panel === null) {
      if (key === 'ArrowUp' || key === '+') return local({ type: 'step', by: 1 });
      if (key === 'ArrowDown' || key === '-') return local({ type: 'step', by: -1 });
      if (key === 'ArrowRight') return local({ type: 'step', by: 'big' });
      if (key === 'ArrowLeft') return local({ type: 'step', by: '-big' });
    }
  }
  if (place.typed && (key === 'Enter' || key === ' ' || key === 'PageDown')) return local({ type: 'keep' });
  return null;
}

function phaseKey(key: string, place: KeyPlace): KeyMeaning | null {
  const { view, panel } = place;
  if (panel !== null) return null;
  const letter = key.toLowerCase();
  switch (view.phase) {
    case 'briefing':
      if (letter === 'y' || key === '1') return request({ type: 'begin', people: 1 });
      return key === '2' ? request({ type: 'begin', people: 2 }) : null;
    case 'asking':
      return view.current ? answerKey(letter, view.current.expects) : null;
    case 'confirming': {
      if (letter === 'y' || key === '1') return request({ type: 'confirm', yes: true, via: 'key' });
      if (letter === 'n') return request({ type: 'confirm', yes: false, via: 'key' });
      const offer = /^[2-9]$/.test(key) ? view.offers[Number(key) - 1] : undefined;
      return offer?.answer ? request({ type: 'answer', answer: offer.answer, via: 'key' }) : null;
    }
    case 'keep-failed':
      return letter === 'y' ? request({ type: 'retry-keep' }) : null;
    case 'held':
      return letter === 'y' ? command('resume') : null;
    case 'wrap-up':
      if (letter === 'f') return request({ type: 'finish' });
      return letter === 'n' ? request({ type: 'confirm', yes: false, via: 'key' }) : null;
    default:
      return null;
  }
}

function answerKey(letter: string, expects: Expects): KeyMeaning | null {
  const answer = answerFor(letter, expects);
  return answer ? request({ type: 'answer', answer, via: 'key' }) : null;
}

function answerFor(letter: string, expects: Expects): Answer | null {
  if (expects.kind === 'state') {
    const other = expects.yesMeans === 'ok' ? 'problem' : 'ok';
    if (letter === 'y') return { kind: 'state', verdict: expects.yesMeans, detail: null };
    if (letter === 'n') return { kind: 'state', verdict: other, detail: null };
    if (letter === '1') return { kind: 'state', verdict: 'ok', detail: null };
    if (letter === '2') return { kind: 'state', verdict: 'problem', detail: null };
  }
  if (expects.kind === 'choice' && /^[1-9]$/.test(letter)) {
    const option = expects.options[Number(letter) - 1];
    return option ? { kind: 'choice', option: option.id, detail: null } : null;
  }
  return null;
}

function commonKey(key: string, { view, panel }: KeyPlace): KeyMeaning | null {
  switch (key) {
    case 'PageDown':
    case 'Enter':
    case ' ':
      return local({ type: 'press' });
    case 'PageUp':
      return local({ type: 'mark-on' });
    case 'ArrowDown':
    case 'ArrowRight':
      return local({ type: 'mark', by: 1 });
    case 'ArrowUp':
    case 'ArrowLeft':
      return local({ type: 'mark', by: -1 });
    case '?':
      return command('help');
    case '+':
      return command('louder');
    case '-':
      return command('quieter');
    case 'Escape':
      return view.phase === 'asking' ? local({ type: 'open', panel: panel === null ? 'more' : null }) : null;
  }
  if (view.phase === 'complete') return key.toLowerCase() === 'r' ? command('repeat') : null;
  const asks = view.phase === 'asking' || view.phase === 'confirming';
  switch (key.toLowerCase()) {
    case 's':
      return asks ? local({ type: 'open', panel: 'skip' }) : null;
    case 'm':
      return asks ? local({ type: 'open', panel: 'note' }) : null;
    case 'a':
      return view.phase === 'briefing' ? null : local({ type: 'open', panel: panel === 'list' ? null : 'list' });
    case 'b':
      return command('back');
    case 'r':
      return command('repeat');
    case 'u':
      return command('undo');
    case 'w':
      return command('where');
    case 'i':
      return command('why');
    case 'h':
      return command(view.phase === 'held' ? 'resume' : 'wait');
    case 'l':
      return request({ type: 'listen', on: view.ears.state === 'off' });
    default:
      return null;
  }
}
