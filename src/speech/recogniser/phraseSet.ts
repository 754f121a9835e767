/**
 * A large set of phrases as one compact rule: a trie whose equal ends are shared, so that the numbers up to a thousand take
 * a few hundred nodes. Source: directed acyclic word graphs, Blumer et al. 1985; here by hashing the trie from its leaves.
 */
import { EMPTY, oneOf, type Rule, sequence, weighted, word } from './grammar.ts';

interface Node {
  readonly children: Map<string, Node>;
  ends: boolean;
}

function ruleOf(node: Node, known: Map<string, Rule>, ids: Map<Rule, number>): Rule {
  const parts = [...node.children]
    .map(([spoken, child]) => [spoken, ruleOf(child, known, ids)] as const)
    .sort(([a], [b]) => (a < b ? -1 : 1));
  const key = `${node.ends ? '.' : ''}${parts.map(([spoken, child]) => `${spoken}:${ids.get(child)}`).join(' ')}`;
  const found = known.get(key);
  if (found) return found;
  const options = parts.map(([spoken, child]) => (child === EMPTY ? word(spoken) : sequence(word(spoken), child)));
  const rule = options.length === 0 ? EMPTY : oneOf(...options, ...(node.ends ? [EMPTY] : []));
  known.set(key, rule);
  ids.set(rule, ids.size);
  return rule;
}

export interface WeightedPhrase {
  readonly words: readonly string[];
  /** Natural log. */
  readonly weight: number;
}

/** Phrases of the same weight share one graph. */
export function phraseSet(phrases: readonly WeightedPhrase[]): Rule {
  const roots = new Map<number, Node>();
  for (const { words, weight } of phrases) {
    const rounded = Math.round(weight * 100) / 100;
    let node = roots.get(rounded);
    if (!node) {
      node = { children: new Map(), ends: false };
      roots.set(rounded, node);
    }
    for (const spoken of words) {
      let child: Node | undefined = node.children.get(spoken);
      if (!child) {
        child = { children: new Map(), ends: false };
        node.children.set(spoken, child);
      }
      node = child;
    }
    node.ends = true;
  }
  const known = new Map<string, Rule>();
  const ids = new Map<Rule, number>();
  return weighted(...[...roots].map(([weight, root]) => [ruleOf(root, known, ids), weight] as const));
}
