/**
 * A grammar as a weighted finite automaton without empty moves: first non-deterministic (shared sub-rules are built once for
 * each continuation), then made deterministic in the tropical semiring (Mohri 1997), then minimal (Moore's refinement).
 */
import type { Rule } from './grammar.ts';

export interface Arc {
  readonly word: string;
  /** Natural log, 0 or below. */
  readonly weight: number;
  readonly target: number;
}

export interface State {
  /** Log weight of ending here; -Infinity where the utterance cannot end. */
  readonly final: number;
  readonly arcs: readonly Arc[];
}

/** State 0 is the start. Every state can be reached and can reach an end. */
export interface Automaton {
  readonly states: readonly State[];
}

/** A grammar that would need more than this is refused: it would not run on a phone. */
const MOST_STATES = 60_000;

/**
 * A reading of the same words that is this much less likely than another counts as no less likely still: otherwise two loops of
 * unlike weight would need a state for each number of rounds.
 */
const FURTHEST = -6;

interface Draft {
  final: number;
  readonly arcs: Arc[];
  readonly empty: { target: number; readonly weight: number }[];
}

function draftOf(rule: Rule): { drafts: Draft[]; start: number } {
  const drafts: Draft[] = [];
  const create = (final = -Infinity): number => {
    if (drafts.length >= MOST_STATES) throw new RangeError('the grammar is too large');
    drafts.push({ final, arcs: [], empty: [] });
    return drafts.length - 1;
  };
  const draft = (id: number): Draft => {
    const found = drafts[id];
    if (!found) throw new RangeError('no such state');
    return found;
  };
  const built = new Map<Rule, Map<number, number>>();

  const build = (part: Rule, next: number): number => {
    const known = built.get(part)?.get(next);
    if (known !== undefined) return known;
    const start = construct(part, next);
    const byNext = built.get(part) ?? new Map<number, number>();
    byNext.set(next, start);
    built.set(part, byNext);
    return start;
  };

  const construct = (part: Rule, next: number): number => {
    if (part.kind === 'word') {
      const start = create();
      draft(start).arcs.push({ word: part.word, weight: 0, target: next });
      return start;
    }
    if (part.kind === 'sequence') return part.parts.reduceRight((after, one) => build(one, after), next);
    if (part.kind === 'choice') {
      const start = create();
      for (const { rule: option, weight } of part.options) draft(start).empty.push({ target: build(option, next), weight });
      return start;
    }
    const again = create();
    const body = build(part.rule, again);
    draft(again).empty.push({ target: next, weight: 0 }, { target: build(part.between, body), weight: part.weight });
    return body;
  };

  const end = create(0);
  return { drafts, start: build(rule, end) };
}

/** Every state that can be reached without a word, with the best weight. */
function closure(drafts: readonly Draft[], from: ReadonlyMap<number, number>): Map<number, number> {
  const reached = new Map(from);
  const queue = [...from.keys()];
  for (let state = queue.pop(); state !== undefined; state = queue.pop()) {
    const base = reached.get(state) ?? -Infinity;
    for (const { target, weight } of drafts[state]?.empty ?? []) {
      const total = base + weight;
      if (total > (reached.get(target) ?? -Infinity) + 1e-9) {
        reached.set(target, total);
        queue.push(target);
      }
    }
  }
  return reached;
}

interface Building {
  final: number;
  arcs: Arc[];
}

function determinize(drafts: readonly Draft[], start: number): Building[] {
  const states: Building[] = [];
  const known = new Map<string, number>();
  const pending: Map<number, number>[] = [];
  const idOf = (subset: Map<number, number>): number => {
    const key = [...subset]
      .sort(([a], [b]) => a - b)
      .map(([state, weight]) => `${state}:${weight.toFixed(3)}`)
      .join(' ');
    const found = known.get(key);
    if (found !== undefined) return found;
    if (states.length >= MOST_STATES) throw new RangeError('the grammar is too large');
    known.set(key, states.length);
    states.push({ final: -Infinity, arcs: [] });
    pending.push(subset);
    return states.length - 1;
  };
  /** Only states with a word or an end matter for what comes next. */
  const relevant = (subset: Map<number, number>) => {
    for (const state of [...subset.keys()]) {
      const draft = drafts[state];
      if (draft && draft.arcs.length === 0 && draft.final === -Infinity) subset.delete(state);
    }
    return subset;
  };
  idOf(relevant(closure(drafts, new Map([[start, 0]]))));
  for (let id = 0; id < pending.length; id += 1) {
    const subset = pending[id];
    const state = states[id];
    if (!subset || !state) break;
    const byWord = new Map<string, Map<number, number>>();
    for (const [member, weight] of subset) {
      const draft = drafts[member];
      if (!draft) continue;
      state.final = Math.max(state.final, draft.final + weight);
      for (const arc of draft.arcs) {
        const targets = byWord.get(arc.word) ?? new Map<number, number>();
        targets.set(arc.target, Math.max(targets.get(arc.target) ?? -Infinity, weight + arc.weight));
        byWord.set(arc.word, targets);
      }
    }
    for (const [word, targets] of byWord) {
      const weight = Math.max(...targets.values());
      const residuals = new Map([...targets].map(([target, total]) => [target, Math.max(FURTHEST, total - weight)]));
      state.arcs.push({ word, weight, target: idOf(relevant(closure(drafts, residuals))) });
    }
  }
  return states;
}

/** Without the states that cannot reach an end. */
function trim(states: readonly Building[]): Building[] {
  const sources: number[][] = states.map(() => []);
  for (const [id, state] of states.entries()) for (const arc of state.arcs) sources[arc.target]?.push(id);
  const alive = new Set<number>();
  const queue = states.flatMap((state, id) => (state.final > -Infinity ? [id] : []));
  for (let id = queue.pop(); id !== undefined; id = queue.pop()) {
    if (alive.has(id)) continue;
    alive.add(id);
    queue.push(...(sources[id] ?? []));
  }
  const renumbered = new Map<number, number>();
  for (const id of states.keys()) if (alive.has(id) || id === 0) renumbered.set(id, renumbered.size);
  return [...renumbered.keys()].map((id) => {
    const state = states[id] ?? { final: -Infinity, arcs: [] };
    return {
      final: state.final,
      arcs: state.arcs.flatMap((arc) => {
        const target = renumbered.get(arc.target);
        return target === undefined || !alive.has(arc.target) ? [] : [{ ...arc, target }];
      }),
    };
  });
}

function minimize(states: readonly Building[]): State[] {
  const words = new Map<string, number>();
  const wordId = (word: string) => {
    const id = words.get(word) ?? words.size;
    words.set(word, id);
    return id;
  };
  const sorted = states.map((state) => ({
    final: state.final,
    arcs: state.arcs
      .map((arc) => ({ word: arc.word, id: wordId(arc.word), weight: Math.round(arc.weight * 1000), target: arc.target }))
      .sort((a, b) => a.id - b.id),
  }));
  let classes = sorted.map(() => 0);
  let count = 0;
  for (;;) {
    const known = new Map<string, number>();
    const next = sorted.map((state, id) => {
      let key = `${classes[id]}|${state.final === -Infinity ? '' : Math.round(state.final * 1000)}`;
      for (const arc of state.arcs) key += `|${arc.id},${arc.weight},${classes[arc.target]}`;
      const found = known.get(key) ?? known.size;
      known.set(key, found);
      return found;
    });
    classes = next;
    if (known.size === count) break;
    count = known.size;
  }
  // Class numbers in order of first appearance, so that the start stays 0.
  const representatives: number[] = [];
  for (const [id, group] of classes.entries()) representatives[group] ??= id;
  return representatives.map((id) => {
    const state = states[id] as Building;
    return { final: state.final, arcs: state.arcs.map((arc) => ({ ...arc, target: classes[arc.target] as number })) };
  });
}

/**
 * Compile a grammar.
 * @throws RangeError when nothing can be said, or the grammar is too large
 */
export function compileGrammar(rule: Rule): Automaton {
  const { drafts, start } = draftOf(rule);
  const states = minimize(trim(determinize(drafts, start)));
  if (!states.some((state) => state.final > -Infinity)) throw new RangeError('the grammar allows nothing to be said');
  return { states };
}

/** Every word on an arc, once. */
export function vocabularyOf(automaton: Automaton): ReadonlySet<string> {
  return new Set(automaton.states.flatMap((state) => state.arcs.map((arc) => arc.word)));
}

/** Whether the automaton allows exactly these words. */
export function accepts(automaton: Automaton, words: readonly string[]): boolean {
  let state = 0;
  for (const spoken of words) {
    const arc = automaton.states[state]?.arcs.find((candidate) => candidate.word === spoken);
    if (!arc) return false;
    state = arc.target;
  }
  return (automaton.states[state]?.final ?? -Infinity) > -Infinity;
}
