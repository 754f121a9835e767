/**
 * From a grammar's automaton to the network that is searched: every word a chain of triphones, with exact contexts across
 * words, and optional silence between any two.
 *
 * A unit is one triphone (three emitting states). A junction stands between two words: (automaton state, last phone,
 * first phone); it emits nothing and connects the ends whose right context matches with the beginnings whose left context
 * matches. Units with the same senones are one unit wherever that changes nothing.
 * Source: the word-internal and cross-word expansion of Ortmanns, Ney and Aubert 1997, for a finite-state grammar.
 */
import { type AcousticModel, STATES, WORD_POSITION, type WordPosition } from './acousticModel.ts';
import type { Automaton } from './automaton.ts';
import type { Lexicon } from './lexicon.ts';

export interface WordGraph {
  readonly words: readonly string[];
  readonly units: number;
  /** Three senones a unit. */
  readonly senones: Uint16Array;
  /** Phone whose transition matrix a unit uses. */
  readonly phone: Uint8Array;
  /** Word that ends with the unit, or -1 inside a word and for silence. */
  readonly wordOf: Int32Array;
  /** Next unit inside the word, or -1 where the word ends. */
  readonly nextUnit: Int32Array;
  /** Junctions that a word-ending unit leads to: junctionList[exitStart[u] .. exitStart[u + 1]]. */
  readonly exitStart: Uint32Array;
  readonly exitList: Uint32Array;
  readonly junctions: number;
  /** Log weight of ending the utterance at a junction. */
  readonly final: Float64Array;
  /** Units that begin at a junction, with the weight of their word. */
  readonly entryStart: Uint32Array;
  readonly entryList: Uint32Array;
  readonly entryWeight: Float32Array;
  /** Whether a unit is silence between words. */
  readonly isSilence: Uint8Array;
  /** Junctions where an utterance can begin. */
  readonly starts: readonly number[];
}

export interface GraphCosts {
  /** Log weight of each word: many short words must not beat one long one. */
  readonly wordInsertion: number;
  /** Log weight of a silence between words. */
  readonly silence: number;
}

/**
 * Silence as the reference decoder has it: 0.005 under a language weight of 6.5. A word costs more than its 2.8: in noise short words
 * ("oh", "two") grow out of nothing. Measured on 140 tuning answers, exact words in gusts at 5 dB: 89.3 % with 2.8, 90.7 with 8, 91.4 with
 * 14; nothing lost elsewhere.
 */
export const GRAPH_COSTS: GraphCosts = { wordInsertion: -16, silence: Math.log(0.005) * 6.5 };

/** Grammar weights are natural logs; the acoustic score is many times sharper than a probability, so they are scaled up. */
const LANGUAGE_WEIGHT = 6.5;

/** A word of the grammar that has no pronunciation. */
export class MissingPronunciation extends Error {
  override readonly name = 'MissingPronunciation';
  readonly words: readonly string[];
  constructor(words: readonly string[]) {
    super(`no pronunciation for ${words.join(', ')}`);
    this.words = words;
  }
}

interface Way {
  readonly word: number;
  readonly weight: number;
  readonly target: number;
  readonly phones: readonly number[];
}

/** Growing lists, turned into typed arrays at the end. */
class GraphBuilder {
  readonly senones: number[] = [];
  readonly phone: number[] = [];
  readonly wordOf: number[] = [];
  readonly nextUnit: number[] = [];
  readonly exits: number[][] = [];
  readonly silent: number[] = [];
  readonly junctionIds = new Map<number, number>();
  readonly final: number[] = [];
  readonly entries: { unit: number; weight: number }[][] = [];

  unit(senones: readonly number[], phone: number, word: number): number {
    this.senones.push(...senones);
    this.phone.push(phone);
    this.wordOf.push(word);
    this.nextUnit.push(-1);
    this.exits.push([]);
    this.silent.push(0);
    return this.phone.length - 1;
  }

  junction(key: number): number {
    const found = this.junctionIds.get(key);
    if (found !== undefined) return found;
    const id = this.junctionIds.size;
    this.junctionIds.set(key, id);
    this.final.push(-Infinity);
    this.entries.push([]);
    return id;
  }

  finish(words: readonly string[], starts: readonly number[]): WordGraph {
    const offsets = (lists: readonly (readonly unknown[])[]) => {
      const start = new Uint32Array(lists.length + 1);
      for (const [index, list] of lists.entries()) start[index + 1] = (start[index] as number) + list.length;
      return start;
    };
    return {
      words,
      units: this.phone.length,
      senones: Uint16Array.from(this.senones),
      phone: Uint8Array.from(this.phone),
      wordOf: Int32Array.from(this.wordOf),
      nextUnit: Int32Array.from(this.nextUnit),
      exitStart: offsets(this.exits),
      exitList: Uint32Array.from(this.exits.flat()),
      junctions: this.final.length,
      final: Float64Array.from(this.final),
      entryStart: offsets(this.entries),
      entryList: Uint32Array.from(this.entries.flatMap((list) => list.map(({ unit }) => unit))),
      entryWeight: Float32Array.from(this.entries.flatMap((list) => list.map(({ weight }) => weight))),
      isSilence: Uint8Array.from(this.silent),
      starts,
    };
  }
}

/** Items with the same signature together, in order of first appearance. */
function groupBy<T>(items: Iterable<T>, signature: (item: T) => string): T[][] {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const key = signature(item);
    const group = groups.get(key);
    if (group) group.push(item);
    else groups.set(key, [item]);
  }
  return [...groups.values()];
}

/**
 * Expand an automaton.
 * @throws MissingPronunciation naming every word that the lexicon does not hold
 */
export function buildWordGraph(automaton: Automaton, lexicon: Lexicon, model: AcousticModel, costs = GRAPH_COSTS): WordGraph {
  const { states } = automaton;
  const words: string[] = [];
  const wordIds = new Map<string, number>();
  const missing = new Set<string>();
  const ways: Way[][] = states.map((state) =>
    state.arcs.flatMap((arc) => {
      const pronunciations = lexicon.get(arc.word);
      if (!pronunciations) {
        missing.add(arc.word);
        return [];
      }
      let word = wordIds.get(arc.word);
      if (word === undefined) {
        word = words.length;
        words.push(arc.word);
        wordIds.set(arc.word, word);
      }
      const id = word;
      return pronunciations.map((names) => ({
        word: id,
        weight: arc.weight * LANGUAGE_WEIGHT + costs.wordInsertion,
        target: arc.target,
        phones: names.map((name) => {
          const phone = model.phoneIndex.get(name);
          if (phone === undefined) throw new RangeError(`${arc.word}: no phone ${name} in the model`);
          return phone;
        }),
      }));
    }),
  );
  if (missing.size > 0) throw new MissingPronunciation([...missing].sort());

  const { silence } = model;
  const count = model.phones.length;
  /** Last phones before a state and first phones after it; silence may stand at any. */
  const before = states.map(() => new Set([silence]));
  const after = states.map(() => new Set([silence]));
  for (const [state, list] of ways.entries()) {
    for (const { phones, target } of list) {
      after[state]?.add(phones[0] as number);
      before[target]?.add(phones.at(-1) as number);
    }
  }

  const builder = new GraphBuilder();
  const junction = (state: number, left: number, right: number) => builder.junction((state * count + left) * count + right);
  const triphone = (phone: number, position: WordPosition, left: number, right: number) =>
    Array.from({ length: STATES }, (_, state) => model.senoneOf(phone, state, position, left, right));
  const enter = (unit: number, state: number, lefts: readonly number[], first: number, weight: number) => {
    for (const left of lefts) builder.entries[junction(state, left, first)]?.push({ unit, weight });
  };
  const leave = (unit: number, state: number, last: number, rights: readonly number[]) => {
    for (const right of rights) builder.exits[unit]?.push(junction(state, last, right));
  };

  /** Word bodies of one target and one pronunciation are shared between states where the contexts allow. */
  for (const [state, list] of ways.entries()) {
    for (const { word, weight, target, phones } of list) {
      const lefts = [...(before[state] ?? [])];
      const rights = [...(after[target] ?? [])];
      const first = phones[0] as number;
      const last = phones.at(-1) as number;
      if (phones.length === 1) {
        const { single } = WORD_POSITION;
        const byLeft = groupBy(lefts, (left) => rights.map((right) => triphone(first, single, left, right)).join(';'));
        for (const someLefts of byLeft) {
          const left = someLefts[0] as number;
          for (const someRights of groupBy(rights, (right) => triphone(first, single, left, right).join())) {
            const unit = builder.unit(triphone(first, single, left, someRights[0] as number), first, word);
            enter(unit, state, someLefts, first, weight);
            leave(unit, target, last, someRights);
          }
        }
        continue;
      }
      const second = phones[1] as number;
      const secondLast = phones.at(-2) as number;
      // Chains are linear, and every chain of a word needs its own ends: build the body once for each first unit's group.
      const begins = groupBy(lefts, (left) => triphone(first, WORD_POSITION.begin, left, second).join());
      const ends = groupBy(rights, (right) => triphone(last, WORD_POSITION.end, secondLast, right).join());
      const body: number[] = [];
      for (let index = 1; index < phones.length - 1; index += 1) {
        const phone = phones[index] as number;
        body.push(
          builder.unit(
            triphone(phone, WORD_POSITION.internal, phones[index - 1] as number, phones[index + 1] as number),
            phone,
            -1,
          ),
        );
      }
      for (let index = 1; index < body.length; index += 1) builder.nextUnit[body[index - 1] as number] = body[index] as number;
      // The fan out at the end is a junction of its own, private to this word.
      const tail = builder.junction(-1 - builder.junctionIds.size);
      for (const someRights of ends) {
        const unit = builder.unit(triphone(last, WORD_POSITION.end, secondLast, someRights[0] as number), last, word);
        builder.entries[tail]?.push({ unit, weight: 0 });
        leave(unit, target, last, someRights);
      }
      const bodyEnd = body.at(-1);
      if (bodyEnd !== undefined) builder.exits[bodyEnd]?.push(tail);
      for (const someLefts of begins) {
        const unit = builder.unit(triphone(first, WORD_POSITION.begin, someLefts[0] as number, second), first, -1);
        if (body[0] !== undefined) builder.nextUnit[unit] = body[0];
        else builder.exits[unit]?.push(tail);
        enter(unit, state, someLefts, first, weight);
      }
    }
  }

  const silenceSenones = Array.from({ length: STATES }, (_, state) => model.ciSenoneOf(silence, state));
  for (const state of states.keys()) {
    const unit = builder.unit(silenceSenones, silence, -1);
    builder.silent[unit] = 1;
    enter(
      unit,
      state,
      [...(before[state] ?? [])].filter((left) => left !== silence),
      silence,
      costs.silence,
    );
    leave(unit, state, silence, [...(after[state] ?? [])]);
    if (state === 0) builder.entries[junction(0, silence, silence)]?.push({ unit, weight: 0 });
  }
  for (const [state, { final }] of states.entries()) {
    if (final === -Infinity) continue;
    for (const left of before[state] ?? []) builder.final[junction(state, left, silence)] = final * LANGUAGE_WEIGHT;
  }
  const starts = [...(after[0] ?? [])].map((right) => junction(0, silence, right));
  return builder.finish(words, starts);
}
