/**
 * The state of a round, computed from its plan and entries and from nothing else. Resume after a crash is
 * this function.
 */
import type { PlannedCheck } from '../plan/plan.ts';
import type { Answer, Entry, Round } from './entry.ts';

export type AnsweredEntry = Extract<Entry, { kind: 'answered' }>;
export type SkippedEntry = Extract<Entry, { kind: 'skipped' }>;
export type NotedEntry = Extract<Entry, { kind: 'noted' }>;

export interface CheckState {
  readonly check: PlannedCheck;
  readonly status: 'open' | 'answered' | 'skipped';
  /** The entry in force; null while open. */
  readonly entry: AnsweredEntry | SkippedEntry | null;
  /** Earlier entries for this check, oldest first. */
  readonly superseded: readonly (AnsweredEntry | SkippedEntry)[];
  readonly notes: readonly NotedEntry[];
}

export interface RunningTimer {
  readonly key: string;
  /** Epoch milliseconds. */
  readonly dueAt: number;
}

export interface RoundState {
  readonly round: Round;
  readonly entries: readonly Entry[];
  readonly phase: 'not-begun' | 'under-way' | 'held' | 'complete';
  readonly people: 1 | 2;
  /** In the order walked. */
  readonly checks: readonly CheckState[];
  readonly byKey: ReadonlyMap<string, CheckState>;
  /** Timed checks whose start was answered and which are still open. */
  readonly timers: readonly RunningTimer[];
  /** Key of the check that was answered or skipped last, for "no, sixty-three". */
  readonly lastKey: string | null;
  /** As `lastKey`, timed checks left out: they are answered out of order, and the walk goes on from before them. */
  readonly walkKey: string | null;
  /** Key that was asked for out of order since the last answer, or null. */
  readonly wentTo: string | null;
  readonly nextSeq: number;
}

interface Draft {
  entry: AnsweredEntry | SkippedEntry | null;
  superseded: (AnsweredEntry | SkippedEntry)[];
  notes: NotedEntry[];
}

/**
 * Replay a round's entries, in `seq` order, over its plan.
 * Entries about a check that the plan does not hold are kept in `entries` and otherwise passed over, so a damaged
 * import never hides the rest. Pure; cost is linear.
 */
export function replay(round: Round, entries: readonly Entry[]): RoundState {
  const drafts = new Map<string, Draft>(
    round.plan.checks.map((check) => [check.key, { entry: null, superseded: [], notes: [] }]),
  );
  const timedKeys = new Set(round.plan.checks.flatMap((check) => (check.timed === null ? [] : [check.key])));
  let phase: RoundState['phase'] = 'not-begun';
  let people: 1 | 2 = 1;
  let lastKey: string | null = null;
  let walkKey: string | null = null;
  let wentTo: string | null = null;
  let nextSeq = 0;
  for (const entry of entries) {
    nextSeq = Math.max(nextSeq, entry.seq + 1);
    switch (entry.kind) {
      case 'begun':
        phase = 'under-way';
        people = entry.people;
        break;
      case 'answered':
      case 'skipped': {
        const draft = drafts.get(entry.key);
        if (!draft) break;
        if (draft.entry) draft.superseded.push(draft.entry);
        draft.entry = entry;
        lastKey = entry.key;
        if (!timedKeys.has(entry.key)) walkKey = entry.key;
        wentTo = null;
        break;
      }
      case 'undone': {
        const draft = drafts.get(entry.key);
        if (!draft?.entry || draft.entry.id !== entry.supersedes) break;
        draft.superseded.push(draft.entry);
        draft.entry = null;
        wentTo = entry.key;
        break;
      }
      case 'noted':
        if (entry.key !== null) drafts.get(entry.key)?.notes.push(entry);
        break;
      case 'went':
        wentTo = entry.key !== null && drafts.has(entry.key) ? entry.key : null;
        break;
      case 'held':
        if (phase !== 'complete') phase = 'held';
        break;
      case 'resumed':
        if (phase !== 'complete') phase = 'under-way';
        break;
      case 'completed':
        phase = 'complete';
        break;
    }
  }
  const checks = round.plan.checks.map((check): CheckState => {
    const draft = drafts.get(check.key) ?? { entry: null, superseded: [], notes: [] };
    const status = draft.entry === null ? 'open' : draft.entry.kind;
    return { check, status, entry: draft.entry, superseded: draft.superseded, notes: draft.notes };
  });
  const byKey = new Map(checks.map((state) => [state.check.key, state]));
  return {
    round,
    entries,
    phase,
    people,
    checks,
    byKey,
    timers: runningTimers(checks),
    lastKey,
    walkKey,
    wentTo,
    nextSeq,
  };
}

/** Deadlines follow from the answer that started them, so they survive anything that the record survives. */
function runningTimers(checks: readonly CheckState[]): RunningTimer[] {
  const timers: RunningTimer[] = [];
  for (const { check, status } of checks) {
    const { timed } = check;
    if (!timed || status !== 'open') continue;
    const start = checks.find((other) => isStart(other.check, timed.startedBy));
    if (start?.entry?.kind !== 'answered') continue;
    const first = start.superseded.find((entry) => entry.kind === 'answered') ?? start.entry;
    timers.push({ key: check.key, dueAt: first.at + timed.minutes * 60_000 });
  }
  return timers.sort((a, b) => a.dueAt - b.dueAt);
}

/** `startedBy` names a check of the catalogue or a key of the plan. */
function isStart(check: PlannedCheck, startedBy: string): boolean {
  return check.key === startedBy || check.check === startedBy;
}

/** The answers in force by key, as the judge wants them. */
export function answersInForce(state: RoundState): ReadonlyMap<string, { readonly answer: Answer; readonly at: number }> {
  const answers = new Map<string, { answer: Answer; at: number }>();
  for (const { check, entry } of state.checks) {
    if (entry?.kind === 'answered') answers.set(check.key, { answer: entry.answer, at: entry.at });
  }
  return answers;
}
