/** A made-up history for the demo world and for the bench: years of rounds from one seed, every entry valid. */
import type { RoundKind } from '../checks/check.ts';
import type { Outcome } from '../checks/outcome.ts';
import type { RoundRecord } from '../history/series.ts';
import { judge } from '../judge/judge.ts';
import type { JudgeContext } from '../judge/judgement.ts';
import type { Plan, PlannedCheck } from '../plan/plan.ts';
import { planRound } from '../plan/planRound.ts';
import { toSI } from '../quantity/units.ts';
import type { Answer, Entry, EntryDraft, How, Round, UnitEvent } from '../round/entry.ts';
import type { Unit } from '../unit/unit.ts';
import { answerFor, type Moment } from './answers.ts';
import { type Random, seededRandom } from './random.ts';
import { beginStory, DAY_MS, filled, outsideF, passTime, type Truth, WINTER_F } from './story.ts';

export interface HistoryOptions {
  readonly units: readonly Unit[];
  /** How far back, > 0. */
  readonly years: number;
  readonly seed: number;
  /** When the history ends, epoch milliseconds. */
  readonly at: number;
  /** Rounds of each unit a season; about 28 unless said otherwise. */
  readonly roundsPerYear?: number;
}

export interface History {
  readonly rounds: readonly RoundRecord[];
  readonly events: readonly UnitEvent[];
}

const YEAR_MS = 365.2425 * DAY_MS;
/** Long enough ago for the leak to be told, short enough for its limit to lie ahead. */
const LAST_FILLED_MS = 36 * DAY_MS;
const SPEAKERS = ['voice', 'voice', 'voice', 'button'] as const;
const SKIP_REASONS = ['under ice', 'too dark to see', 'no gauge at hand'] as const;

/**
 * Rounds, entries and events of demo units, all marked as demo. Pure: the same options give the same history, whatever
 * runs them.
 *
 * In it: a slow leak that is pumped up now and then, a lug that moves nearly every time, a battery that fades and a furnace
 * that slows, one or two for each unit in turn; corrections, skips and notes as people make them.
 * @throws RangeError "generateHistory requires years > 0 and a finite time"
 */
export function generateHistory({ units, years, seed, at, roundsPerYear = 28 }: HistoryOptions): History {
  if (!(years > 0) || !Number.isFinite(at) || !(roundsPerYear > 0)) {
    throw new RangeError('generateHistory requires years > 0 and a finite time');
  }
  const rounds: RoundRecord[] = [];
  const events: UnitEvent[] = [];
  const plans = new Map<string, Plan>();
  for (const [index, unit] of units.entries()) {
    const random = seededRandom(seed * 1009 + index);
    const truth = beginStory({ ...unit, demo: true }, index, years, random);
    let last = at - years * YEAR_MS;
    const days = seasonDays(at, years, roundsPerYear, random);
    for (const [number, startedAt] of days.entries()) {
      const idle = (startedAt - last) / DAY_MS;
      passTime(truth, idle);
      // Off the blocks in the fall, and once a month before the end, every tire is filled: the leak shows again since then.
      if (idle > 60 || (last < at - LAST_FILLED_MS && startedAt >= at - LAST_FILLED_MS)) fillAll(truth, random);
      last = startedAt;
      const kind: RoundKind =
        number % 7 === 6 ? 'stop-on-the-road' : number % 2 === 0 ? 'before-towing' : 'before-leaving-the-lake';
      const plan = cachedPlan(plans, { ...unit, demo: true }, kind, startedAt);
      const id = `demo-${unit.id}-${String(number + 1).padStart(4, '0')}`;
      const made = walk({ id, unit, plan, startedAt, truth, years: (startedAt - at) / YEAR_MS + years, random });
      rounds.push(made.record);
      events.push(...made.events);
    }
  }
  return { rounds: rounds.sort((a, b) => a.round.startedAt - b.round.startedAt), events: events.sort((a, b) => a.at - b.at) };
}

/** Starts of rounds, oldest first: early mornings from November to March, the last one a few days ago. */
function seasonDays(at: number, years: number, roundsPerYear: number, random: Random): number[] {
  const starts: number[] = [];
  const spacing = 151 / roundsPerYear;
  for (let back = 3; back < years * 365.2425; back += spacing) {
    let day = at - back * DAY_MS;
    while (!isSeason(day)) {
      back += 30;
      day = at - back * DAY_MS;
    }
    if (back >= years * 365.2425) break;
    const morning = Math.floor(day / DAY_MS) * DAY_MS + (12 + 3 * random.uniform()) * 3_600_000;
    if (morning < at) starts.unshift(Math.round(morning));
  }
  return starts;
}

function isSeason(at: number): boolean {
  const month = new Date(at).getUTCMonth();
  return month >= 10 || month <= 2;
}

/** Planning takes the shortest walk, which is slow; within a year the same unit walks the same way. */
function cachedPlan(plans: Map<string, Plan>, unit: Unit, kind: RoundKind, at: number): Plan {
  const id = `${unit.id} ${unit.revision} ${kind} ${new Date(at).getUTCFullYear()}`;
  const plan = plans.get(id) ?? planRound(unit, kind, at);
  plans.set(id, plan);
  return { ...plan, createdAt: at, demo: true };
}

interface Walk {
  readonly id: string;
  readonly unit: Unit;
  readonly plan: Plan;
  readonly startedAt: number;
  readonly truth: Truth;
  readonly years: number;
  readonly random: Random;
}

function walk({ id, unit, plan, startedAt, truth, years, random }: Walk): { record: RoundRecord; events: UnitEvent[] } {
  const outside = outsideF(startedAt, random);
  const moment: Moment = {
    truth,
    outsideF: outside,
    insideStartF: Math.round(outside + 4 + 6 * random.uniform()),
    years,
    elevationM: unit.homeElevationM,
    year: new Date(startedAt).getUTCFullYear(),
  };
  const round: Round = { schema: 1, id, unit: unit.id, startedAt, plan, demo: true };
  const events: UnitEvent[] = [];
  const writer = new Writer(round, startedAt);
  writer.add({ kind: 'begun', people: random.chance(0.3) ? 2 : 1 });
  for (const check of inOrderOfTime(plan.checks, writer, random)) {
    if (random.chance(0.006)) {
      const reason = random.pick(SKIP_REASONS);
      writer.add({ kind: 'skipped', key: check.key, reason, how: howFor(reason, random), supersedes: null });
      continue;
    }
    const answer = answerFor(check, moment, random);
    const outcome = judge(check, answer, contextFor(writer, moment, unit)).outcome;
    const heard = writer.answer(check, answer, outcome, howFor(transcriptOf(check, answer), random), null);
    if (answer.kind === 'count' && answer.count > 0 && check.judge.rule === 'lugs-moved') {
      writer.add({
        kind: 'noted',
        key: check.key,
        text: 'Lug three moved an eighth of a turn.',
        clip: null,
        photo: null,
        finding: false,
        how: howFor(null, random),
      });
    }
    if (answer.kind === 'reading' && random.chance(0.01)) {
      // Heard again and said again: a correction that leaves the value as it was.
      writer.answer(check, answer, outcome, howFor(transcriptOf(check, answer), random), heard);
    }
    const mended = mendedAfter(check, outcome, moment, round, writer.at, random);
    if (mended) events.push(mended);
  }
  writer.add({ kind: 'completed' });
  return { record: { round, entries: writer.entries }, events };
}

/** Appends entries as the record would take them. */
class Writer {
  readonly entries: Entry[] = [];
  readonly answers = new Map<string, { answer: Answer; at: number }>();
  at: number;
  private readonly round: Round;

  constructor(round: Round, at: number) {
    this.round = round;
    this.at = at;
  }

  add(draft: EntryDraft): string {
    const id = `${this.round.id}-${this.entries.length}`;
    this.entries.push({ ...draft, id, round: this.round.id, seq: this.entries.length, at: this.at } as Entry);
    return id;
  }

  answer(
    check: PlannedCheck,
    answer: Answer,
    outcome: ReturnType<typeof judge>['outcome'],
    how: How,
    supersedes: string | null,
  ): string {
    this.answers.set(check.key, { answer, at: this.at });
    return this.add({ kind: 'answered', key: check.key, answer, outcome, how, supersedes });
  }
}

/** The order walked, with timed checks taken as soon as they are due; moves the writer's clock. */
function* inOrderOfTime(checks: readonly PlannedCheck[], writer: Writer, random: Random): Generator<PlannedCheck> {
  const waiting = new Set(checks.filter((check) => check.timed !== null));
  for (const check of checks) {
    writer.at += Math.round((8 + 20 * random.uniform()) * 1000);
    for (const timed of waiting) {
      const started = writer.answers.get(timed.timed?.startedBy ?? '');
      if (!started || writer.at < started.at + (timed.timed?.minutes ?? 0) * 60_000) continue;
      waiting.delete(timed);
      yield timed;
    }
    if (!check.timed) yield check;
  }
  for (const timed of waiting) {
    const started = writer.answers.get(timed.timed?.startedBy ?? '');
    if (!started) continue;
    writer.at = Math.max(writer.at, started.at + (timed.timed?.minutes ?? 0) * 60_000) + 5000;
    yield timed;
  }
}

function contextFor(writer: Writer, moment: Moment, unit: Unit): JudgeContext {
  return {
    at: writer.at,
    outsideK: toSI(moment.outsideF, 'F'),
    elevationM: unit.homeElevationM,
    hoursParked: 12,
    answers: writer.answers,
    display: 'us',
  };
}

function fillAll(truth: Truth, random: Random): void {
  for (const wheel of truth.wheels.values()) wheel.pressurePsi = filled(truth.placardPsi, WINTER_F, random);
}

/** What is to be mended is mended after the round, most of the time, and that is kept as an event. */
function mendedAfter(
  check: PlannedCheck,
  outcome: Outcome,
  moment: Moment,
  round: Round,
  at: number,
  random: Random,
): UnitEvent | null {
  if (outcome !== 'fix' && outcome !== 'hold') return null;
  const wheel = check.position === null ? undefined : moment.truth.wheels.get(check.position);
  const isTire = check.judge.rule === 'tire-pressure' && wheel !== undefined;
  if (!isTire && random.chance(0.1)) return null;
  if (isTire) wheel.pressurePsi = Math.max(wheel.pressurePsi, filled(moment.truth.placardPsi, moment.outsideF, random));
  return {
    id: `${round.id}-mended-${check.key}`,
    unit: round.unit,
    at: at + 3_600_000,
    kind: 'mended',
    finding: `${round.id}/${check.key}`,
    what: isTire ? 'Pumped up to the placard.' : 'Put right before the trip.',
    who: null,
    cost: null,
  };
}

function transcriptOf(check: PlannedCheck, answer: Answer): string | null {
  switch (answer.kind) {
    case 'reading':
      return String(answer.said.value);
    case 'count':
      return answer.count === 0 ? 'none' : String(answer.count);
    case 'state':
      return check.expects.kind === 'state' ? (check.expects[answer.verdict][0] ?? null) : null;
    case 'choice':
      return check.expects.kind === 'choice'
        ? (check.expects.options.find((option) => option.id === answer.option)?.label ?? null)
        : null;
    case 'date':
      return answer.value;
  }
}

function howFor(transcript: string | null, random: Random): How {
  const spoken = random.pick(SPEAKERS) === 'voice';
  return {
    via: spoken ? 'voice' : 'button',
    provider: spoken ? 'built-in' : null,
    by: 'first',
    transcript: spoken ? transcript : null,
    alternatives: [],
    confidence: spoken ? Number((0.86 + 0.13 * random.uniform()).toFixed(3)) : null,
    because: spoken ? ['Fits the question.', 'Heard clearly.'] : [],
    clip: null,
  };
}
