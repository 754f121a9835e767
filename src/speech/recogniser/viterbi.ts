/**
 * Token-passing Viterbi search (Young, Russell and Thornton 1989) over a word graph, with a few tokens a state so that the
 * best several word sequences come out directly. Tokens of the same words meet and the better stays.
 *
 * A frame: every active unit passes its tokens from state to state and adds the frame's likelihood; tokens that leave a unit
 * go to the next unit, or through a junction to all words that may follow. Units that fall behind the best by more than the
 * beam are dropped. Memory is fixed but for the words' history, which an utterance bounds.
 */
import { type AcousticModel, STATES } from './acousticModel.ts';
import type { FrameScorer } from './senoneScorer.ts';
import type { WordGraph } from './wordGraph.ts';
import { NO_WORDS, WordHistory } from './wordHistory.ts';
import { type SpokenWord, WordTrace } from './wordTrace.ts';

export interface SearchOptions {
  /** Tokens a state. */
  readonly tokens: number;
  /** Nats behind the best at which a unit is dropped. */
  readonly beam: number;
  /** Nats behind the best at which the end of a word is not followed. */
  readonly wordBeam: number;
  /** Units above which the beam is drawn in until fewer are left: other people's talk keeps everything alive. Left out: never. */
  readonly mostUnits?: number;
}

/**
 * The narrowest at which no answer of 70 tuning clips in wind, gusts and babble was heard worse than with beams of 110 and 65, 6 tokens
 * and 1000 units; a third of the time.
 */
export const SEARCH: SearchOptions = { tokens: 4, beam: 75, wordBeam: 55, mostUnits: 350 };

/** The beam is never drawn in further. */
const LEAST_BEAM = 50;

export interface Path {
  readonly words: readonly string[];
  /** Natural log, acoustic and grammar together. */
  readonly score: number;
  readonly spoken: readonly SpokenWord[];
}

export class ViterbiSearch {
  readonly #model: AcousticModel;
  readonly #graph: WordGraph;
  readonly #options: SearchOptions;
  readonly #k: number;
  readonly #score: Float64Array;
  readonly #history: Int32Array;
  readonly #trace: Int32Array;
  readonly #entryScore: Float64Array;
  readonly #entryHistory: Int32Array;
  readonly #entryTrace: Int32Array;
  readonly #junctionScore: Float64Array;
  readonly #junctionHistory: Int32Array;
  readonly #junctionTrace: Int32Array;
  readonly #touched: Uint32Array;
  readonly #isTouched: Uint8Array;
  #touchedCount = 0;
  #active: Uint32Array;
  #next: Uint32Array;
  #activeCount = 0;
  #nextCount = 0;
  /** Whether a unit is in the list for the coming frame. */
  readonly #queued: Uint8Array;
  readonly #unitBest: Float64Array;
  readonly #exitScore: Float64Array;
  readonly #exitHistory: Int32Array;
  readonly #exitTrace: Int32Array;
  readonly #mergedScore: Float64Array;
  readonly #mergedHistory: Int32Array;
  readonly #mergedTrace: Int32Array;
  readonly #histories: WordHistory;
  readonly #traces = new WordTrace();
  #frame = 0;
  #best = 0;
  #beam = 0;

  constructor(model: AcousticModel, graph: WordGraph, options = SEARCH) {
    const k = options.tokens;
    this.#model = model;
    this.#graph = graph;
    this.#options = options;
    this.#k = k;
    const slots = graph.units * STATES * k;
    this.#score = new Float64Array(slots).fill(-Infinity);
    this.#history = new Int32Array(slots);
    this.#trace = new Int32Array(slots);
    this.#entryScore = new Float64Array(graph.units * k).fill(-Infinity);
    this.#entryHistory = new Int32Array(graph.units * k);
    this.#entryTrace = new Int32Array(graph.units * k);
    this.#junctionScore = new Float64Array(graph.junctions * k).fill(-Infinity);
    this.#junctionHistory = new Int32Array(graph.junctions * k);
    this.#junctionTrace = new Int32Array(graph.junctions * k);
    this.#touched = new Uint32Array(graph.junctions);
    this.#isTouched = new Uint8Array(graph.junctions);
    this.#active = new Uint32Array(graph.units);
    this.#next = new Uint32Array(graph.units);
    this.#queued = new Uint8Array(graph.units);
    this.#unitBest = new Float64Array(graph.units);
    this.#exitScore = new Float64Array(k);
    this.#exitHistory = new Int32Array(k);
    this.#exitTrace = new Int32Array(k);
    this.#mergedScore = new Float64Array(k);
    this.#mergedHistory = new Int32Array(k);
    this.#mergedTrace = new Int32Array(k);
    this.#histories = new WordHistory(graph.words.length);
  }

  /** Forget everything and stand at the beginning of an utterance. */
  begin(): void {
    this.#score.fill(-Infinity);
    this.#entryScore.fill(-Infinity);
    this.#junctionScore.fill(-Infinity);
    this.#isTouched.fill(0);
    this.#queued.fill(0);
    this.#touchedCount = 0;
    this.#activeCount = 0;
    this.#nextCount = 0;
    this.#frame = 0;
    this.#best = 0;
    this.#beam = this.#options.beam;
    this.#histories.clear();
    this.#traces.clear();
    for (const junction of this.#graph.starts) {
      this.#touch(junction);
      this.#junctionScore[junction * this.#k] = 0;
      this.#junctionHistory[junction * this.#k] = NO_WORDS;
      this.#junctionTrace[junction * this.#k] = -1;
    }
    this.#followJunctions();
  }

  /** One frame; the scorer stands at it. */
  step(scorer: FrameScorer): void {
    this.#clearJunctions();
    const active = this.#next;
    this.#next = this.#active;
    this.#active = active;
    this.#activeCount = this.#nextCount;
    this.#nextCount = 0;

    const { senones, phone } = this.#graph;
    const { transitions } = this.#model;
    const k = this.#k;
    let best = -Infinity;
    for (let index = 0; index < this.#activeCount; index += 1) {
      const unit = active[index] as number;
      this.#queued[unit] = 0;
      const base = unit * STATES * k;
      const row = (phone[unit] as number) * STATES * (STATES + 1);
      let unitBest = -Infinity;
      for (let state = STATES - 1; state >= 0; state -= 1) {
        const self = transitions[row + state * (STATES + 1) + state] as number;
        const at = base + state * k;
        if (state > 0) {
          const step = transitions[row + (state - 1) * (STATES + 1) + state] as number;
          this.#merge(at, self, this.#score, this.#history, this.#trace, at - k, step);
        } else {
          this.#merge(at, self, this.#entryScore, this.#entryHistory, this.#entryTrace, unit * k, 0);
        }
        const top = this.#score[at] as number;
        if (top === -Infinity) continue;
        const likelihood = scorer.score(senones[unit * STATES + state] as number);
        for (let slot = at; slot < at + k; slot += 1) this.#score[slot] = (this.#score[slot] as number) + likelihood;
        if (top + likelihood > unitBest) unitBest = top + likelihood;
      }
      for (let slot = unit * k; slot < unit * k + k; slot += 1) this.#entryScore[slot] = -Infinity;
      this.#unitBest[unit] = unitBest;
      if (unitBest > best) best = unitBest;
    }
    this.#best = best;
    this.#leaveUnits(best);
    this.#followJunctions();
    this.#frame += 1;
  }

  /** Drop what fell behind; pass on what leaves its unit. */
  #leaveUnits(best: number): void {
    const { nextUnit, exitStart, exitList, wordOf, isSilence, phone } = this.#graph;
    const { transitions } = this.#model;
    const k = this.#k;
    const { beam, wordBeam, mostUnits = Infinity } = this.#options;
    this.#beam = this.#activeCount > mostUnits ? Math.max(LEAST_BEAM, 0.9 * this.#beam) : Math.min(beam, 1.05 * this.#beam);
    const floor = best - this.#beam;
    const wordFloor = best - Math.min(wordBeam, this.#beam);
    for (let index = 0; index < this.#activeCount; index += 1) {
      const unit = this.#active[index] as number;
      const base = unit * STATES * k;
      if (!((this.#unitBest[unit] as number) >= floor)) {
        for (let slot = base; slot < base + STATES * k; slot += 1) this.#score[slot] = -Infinity;
        continue;
      }
      this.#queue(unit);
      const last = base + (STATES - 1) * k;
      const leave = transitions[(phone[unit] as number) * STATES * (STATES + 1) + STATES * STATES + STATES - 1] as number;
      const top = (this.#score[last] as number) + leave;
      const inside = nextUnit[unit] as number;
      if (inside >= 0) {
        if (top < floor) continue;
        // Several beginnings, one for each context before the word, may lead into the same body.
        for (let slot = last; slot < last + k; slot += 1) {
          const score = (this.#score[slot] as number) + leave;
          if (score === -Infinity) break;
          const taken = insert(
            this.#entryScore,
            this.#entryHistory,
            this.#entryTrace,
            inside * k,
            k,
            score,
            this.#history[slot] as number,
            this.#trace[slot] as number,
          );
          if (!taken) break;
        }
        this.#queue(inside);
        continue;
      }
      const word = wordOf[unit] as number;
      const silent = isSilence[unit] === 1;
      if (top < (word >= 0 || silent ? wordFloor : floor)) continue;
      let count = 0;
      for (let slot = 0; slot < k; slot += 1) {
        const score = (this.#score[last + slot] as number) + leave;
        if (score === -Infinity) break;
        const history = this.#history[last + slot] as number;
        const trace = this.#trace[last + slot] as number;
        this.#exitScore[slot] = score;
        this.#exitHistory[slot] = word >= 0 ? this.#histories.append(history, word) : history;
        this.#exitTrace[slot] = word >= 0 || silent ? this.#traces.add(word, this.#frame, trace, score) : trace;
        count += 1;
      }
      const end = exitStart[unit + 1] as number;
      for (let exit = exitStart[unit] as number; exit < end; exit += 1) {
        const junction = exitList[exit] as number;
        this.#touch(junction);
        for (let slot = 0; slot < count; slot += 1) {
          const taken = insert(
            this.#junctionScore,
            this.#junctionHistory,
            this.#junctionTrace,
            junction * k,
            k,
            this.#exitScore[slot] as number,
            this.#exitHistory[slot] as number,
            this.#exitTrace[slot] as number,
          );
          if (!taken) break;
        }
      }
    }
  }

  #followJunctions(): void {
    const { entryStart, entryList, entryWeight } = this.#graph;
    const k = this.#k;
    for (let index = 0; index < this.#touchedCount; index += 1) {
      const junction = this.#touched[index] as number;
      const end = entryStart[junction + 1] as number;
      for (let entry = entryStart[junction] as number; entry < end; entry += 1) {
        const unit = entryList[entry] as number;
        const weight = entryWeight[entry] as number;
        for (let slot = junction * k; slot < junction * k + k; slot += 1) {
          const score = this.#junctionScore[slot] as number;
          if (score === -Infinity) break;
          const taken = insert(
            this.#entryScore,
            this.#entryHistory,
            this.#entryTrace,
            unit * k,
            k,
            score + weight,
            this.#junctionHistory[slot] as number,
            this.#junctionTrace[slot] as number,
          );
          if (!taken) break;
        }
        this.#queue(unit);
      }
    }
  }

  /** Tokens of the state itself and of the one before it: the best few with different words. */
  #merge(
    at: number,
    self: number,
    fromScore: Float64Array,
    fromHistory: Int32Array,
    fromTrace: Int32Array,
    from: number,
    step: number,
  ): void {
    const k = this.#k;
    const score = this.#score;
    const history = this.#history;
    const trace = this.#trace;
    const incoming = (fromScore[from] as number) + step;
    if (incoming === -Infinity) {
      for (let slot = at; slot < at + k; slot += 1) score[slot] = (score[slot] as number) + self;
      return;
    }
    if (score[at] === -Infinity) {
      for (let slot = 0; slot < k; slot += 1) {
        score[at + slot] = (fromScore[from + slot] as number) + step;
        history[at + slot] = fromHistory[from + slot] as number;
        trace[at + slot] = fromTrace[from + slot] as number;
      }
      return;
    }
    const mergedHistory = this.#mergedHistory;
    let count = 0;
    let a = 0;
    let b = 0;
    while (count < k && (a < k || b < k)) {
      const own = a < k ? (score[at + a] as number) + self : -Infinity;
      const other = b < k ? (fromScore[from + b] as number) + step : -Infinity;
      if (own === -Infinity && other === -Infinity) break;
      const useOwn = own >= other;
      const words = useOwn ? (history[at + a] as number) : (fromHistory[from + b] as number);
      let held = false;
      for (let slot = 0; slot < count; slot += 1) {
        if (mergedHistory[slot] === words) {
          held = true;
          break;
        }
      }
      if (!held) {
        this.#mergedScore[count] = useOwn ? own : other;
        mergedHistory[count] = words;
        this.#mergedTrace[count] = useOwn ? (trace[at + a] as number) : (fromTrace[from + b] as number);
        count += 1;
      }
      if (useOwn) a += 1;
      else b += 1;
    }
    for (let slot = 0; slot < k; slot += 1) {
      score[at + slot] = slot < count ? (this.#mergedScore[slot] as number) : -Infinity;
      history[at + slot] = mergedHistory[slot] as number;
      trace[at + slot] = this.#mergedTrace[slot] as number;
    }
  }

  #queue(unit: number): void {
    if (this.#queued[unit] === 1) return;
    this.#queued[unit] = 1;
    this.#next[this.#nextCount] = unit;
    this.#nextCount += 1;
  }

  #touch(junction: number): void {
    if (this.#isTouched[junction] === 1) return;
    this.#isTouched[junction] = 1;
    this.#touched[this.#touchedCount] = junction;
    this.#touchedCount += 1;
  }

  #clearJunctions(): void {
    const k = this.#k;
    for (let index = 0; index < this.#touchedCount; index += 1) {
      const junction = this.#touched[index] as number;
      for (let slot = junction * k; slot < junction * k + k; slot += 1) this.#junctionScore[slot] = -Infinity;
      this.#isTouched[junction] = 0;
    }
    this.#touchedCount = 0;
  }

  /** Units that were searched in the last frame. */
  get activeUnits(): number {
    return this.#activeCount;
  }

  /** Score of the best token after the last frame, wherever it stands. */
  get bestScore(): number {
    return this.#best;
  }

  /**
   * The best word sequences that are whole at the last frame, best first; empty when none is.
   */
  paths(most: number): readonly Path[] {
    const k = this.#k;
    const { final, words } = this.#graph;
    const best = new Map<number, { score: number; trace: number }>();
    for (let index = 0; index < this.#touchedCount; index += 1) {
      const junction = this.#touched[index] as number;
      const weight = final[junction] as number;
      if (weight === -Infinity) continue;
      for (let slot = junction * k; slot < junction * k + k; slot += 1) {
        const score = (this.#junctionScore[slot] as number) + weight;
        if (score === -Infinity) break;
        const history = this.#junctionHistory[slot] as number;
        if (score > (best.get(history)?.score ?? -Infinity))
          best.set(history, { score, trace: this.#junctionTrace[slot] as number });
      }
    }
    return [...best]
      .sort(([, a], [, b]) => b.score - a.score)
      .slice(0, most)
      .map(([history, { score, trace }]) => ({
        words: this.#histories.words(history).map((word) => words[word] as string),
        score,
        spoken: this.#traces.read(trace),
      }));
  }

  /** Words of the best token so far, for showing while the person still speaks. */
  bestWords(): readonly string[] {
    let best = -Infinity;
    let history = NO_WORDS;
    for (let index = 0; index < this.#nextCount; index += 1) {
      const unit = this.#next[index] as number;
      for (let state = 0; state < STATES; state += 1) {
        const at = (unit * STATES + state) * this.#k;
        if ((this.#score[at] as number) > best) {
          best = this.#score[at] as number;
          history = this.#history[at] as number;
        }
      }
    }
    return this.#histories.words(history).map((word) => this.#graph.words[word] as string);
  }
}

/**
 * Put a token among a sorted few with different words.
 * @returns false when it was worse than all, and so nothing after it in a sorted list can be taken either
 */
function insert(
  scores: Float64Array,
  histories: Int32Array,
  traces: Int32Array,
  at: number,
  k: number,
  score: number,
  history: number,
  trace: number,
): boolean {
  const last = at + k - 1;
  if (score <= (scores[last] as number)) return false;
  let place = last;
  for (let slot = at; slot <= last; slot += 1) {
    if (histories[slot] === history && scores[slot] !== -Infinity) {
      if ((scores[slot] as number) >= score) return true;
      place = slot;
      break;
    }
  }
  while (place > at && (scores[place - 1] as number) < score) {
    scores[place] = scores[place - 1] as number;
    histories[place] = histories[place - 1] as number;
    traces[place] = traces[place - 1] as number;
    place -= 1;
  }
  scores[place] = score;
  histories[place] = history;
  traces[place] = trace;
  return true;
}
