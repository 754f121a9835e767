/**
 * Grammars as text: reads the JSpeech Grammar Format (W3C Note, 5 June 2000) without imports and tags, and writes it and the
 * ABNF form of the Speech Recognition Grammar Specification 1.0 (W3C Recommendation, 16 March 2004).
 */
import type { Automaton } from './automaton.ts';
import { EMPTY, oneOrMore, optional, type Rule, sequence, weighted, word, wordsOf } from './grammar.ts';

/** The text is not a grammar that can be read; the message says where. */
export class GrammarSyntaxError extends Error {
  override readonly name = 'GrammarSyntaxError';
}

const TOKEN =
  /\s+|\/\/[^\n]*|\/\*[\s\S]*?\*\/|"(?:[^"\\]|\\.)*"|<[^<>]+>|\{(?:[^{}\\]|\\.)*\}|\/\s*[\d.]+\s*\/|[=|()[\];*+]|[^\s=|()[\];*+<>{}"/]+/y;

function tokensOf(text: string): string[] {
  const tokens: string[] = [];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < text.length) {
    const at = TOKEN.lastIndex;
    const match = TOKEN.exec(text);
    if (!match) throw new GrammarSyntaxError(`cannot read the grammar at "${text.slice(at, at + 20)}"`);
    const token = match[0];
    // Tags carry an application's meaning, not words.
    if (!/^(\s|\/\/|\/\*|\{)/.test(token)) tokens.push(token);
  }
  return tokens;
}

/**
 * Read a grammar.
 * @returns the first public rule, with every reference put in its place
 * @throws GrammarSyntaxError for text that is no JSGF, an unknown or a recursive rule
 */
export function parseJsgf(text: string): Rule {
  const header = /^\s*#JSGF[^;]*;/.exec(text);
  if (!header) throw new GrammarSyntaxError('a grammar begins with #JSGF');
  const tokens = tokensOf(text.slice(header[0].length));
  let at = 0;
  const peek = () => tokens[at];
  const take = (expected?: string): string => {
    const token = tokens[at];
    if (token === undefined || (expected !== undefined && token !== expected)) {
      throw new GrammarSyntaxError(`expected ${expected ?? 'more'}, found ${token ?? 'the end'}`);
    }
    at += 1;
    return token;
  };

  type Node =
    | Rule
    | { readonly kind: 'reference'; readonly name: string }
    | { readonly kind: 'tree'; readonly make: (resolve: (node: Node) => Rule) => Rule };
  const resolved = new Map<string, Rule>();
  const bodies = new Map<string, Node>();

  const choice = (): Node => {
    const options: { node: Node; weight: number }[] = [];
    do {
      let weight = 1;
      const mark = peek();
      if (mark?.startsWith('/')) {
        weight = Number(take().replaceAll('/', ''));
        if (!(weight >= 0)) throw new GrammarSyntaxError(`not a weight: ${mark}`);
      }
      options.push({ node: series(), weight });
    } while (peek() === '|' && take('|'));
    const total = options.reduce((sum, { weight }) => sum + weight, 0);
    const weighed = options.some(({ weight }) => weight !== 1);
    const [only] = options;
    if (options.length === 1 && only) return only.node;
    return {
      kind: 'tree',
      make: (resolve) =>
        weighted(...options.map(({ node, weight }) => [resolve(node), weighed ? Math.log(weight / total) : 0] as const)),
    };
  };
  const series = (): Node => {
    const parts: Node[] = [];
    for (let token = peek(); token !== undefined && !['|', ')', ']', ';'].includes(token); token = peek()) {
      let node: Node;
      if (token === '(') {
        take();
        node = choice();
        take(')');
      } else if (token === '[') {
        take();
        const inner = choice();
        take(']');
        node = { kind: 'tree', make: (resolve) => optional(resolve(inner)) };
      } else if (token.startsWith('<')) {
        const name = take().slice(1, -1).trim();
        node = name === 'NULL' ? EMPTY : { kind: 'reference', name };
      } else if (token === '=' || token === '*' || token === '+' || token.startsWith('/')) {
        throw new GrammarSyntaxError(`unexpected ${token}`);
      } else {
        node = sequence(...wordsOf(take()).map(word));
      }
      const inner = node;
      const mark = peek();
      if (mark === '*') {
        take();
        node = { kind: 'tree', make: (resolve) => optional(oneOrMore(resolve(inner))) };
      } else if (mark === '+') {
        take();
        node = { kind: 'tree', make: (resolve) => oneOrMore(resolve(inner)) };
      }
      parts.push(node);
    }
    const [only] = parts;
    if (parts.length === 1 && only) return only;
    return { kind: 'tree', make: (resolve) => sequence(...parts.map(resolve)) };
  };

  let first: string | undefined;
  let name: string | undefined;
  // The grammar's own name is not needed.
  if (peek() === 'grammar') while (take() !== ';');
  while (peek() !== undefined) {
    const isPublic = peek() === 'public';
    if (isPublic) take();
    name = take();
    if (!name.startsWith('<')) throw new GrammarSyntaxError(`expected a rule's name, found ${name}`);
    name = name.slice(1, -1).trim();
    take('=');
    bodies.set(name, choice());
    take(';');
    if (isPublic) first ??= name;
  }
  const start = first ?? name;
  if (start === undefined) throw new GrammarSyntaxError('the grammar has no rule');

  const open = new Set<string>();
  const resolve = (node: Node): Rule => {
    if (node.kind === 'tree') return node.make(resolve);
    if (node.kind !== 'reference') return node;
    const known = resolved.get(node.name);
    if (known) return known;
    const body = bodies.get(node.name);
    if (!body) throw new GrammarSyntaxError(`no rule <${node.name}>`);
    if (open.has(node.name)) throw new GrammarSyntaxError(`<${node.name}> refers to itself`);
    open.add(node.name);
    const rule = resolve(body);
    open.delete(node.name);
    resolved.set(node.name, rule);
    return rule;
  };
  return resolve({ kind: 'reference', name: start });
}

interface Notation {
  readonly head: (name: string) => string;
  readonly reference: (state: number) => string;
  readonly rule: (state: number, isRoot: boolean, body: string) => string;
  readonly empty: string;
}

const JSGF: Notation = {
  head: (name) => `#JSGF V1.0;\ngrammar ${name};\n`,
  reference: (state) => `<s${state}>`,
  rule: (state, isRoot, body) => `${isRoot ? 'public ' : ''}<s${state}> = ${body};`,
  empty: '<NULL>',
};

const ABNF: Notation = {
  head: () => '#ABNF 1.0 UTF-8;\nlanguage en-US;\nmode voice;\nroot $s0;\n',
  reference: (state) => `$s${state}`,
  rule: (state, isRoot, body) => `${isRoot ? 'public ' : ''}$s${state} = ${body};`,
  empty: '$NULL',
};

/** A rule for each state that more than one way leads to; the others are written out where they stand. */
function write({ states }: Automaton, name: string, notation: Notation): string {
  const uses = states.map(() => 0);
  for (const state of states) for (const arc of state.arcs) uses[arc.target] = (uses[arc.target] ?? 0) + 1;
  const isNamed = (state: number) => state === 0 || (uses[state] ?? 0) > 1;
  const inline = (state: number): string =>
    isNamed(state) && (states[state]?.arcs.length ?? 0) > 0 ? notation.reference(state) : body(state);
  const weigh = (weight: number) => (weight < 0 ? `/${Math.exp(weight).toPrecision(4)}/ ` : '');
  const body = (id: number): string => {
    const state = states[id];
    if (!state || state.arcs.length === 0) return '';
    const mayEnd = state.final > -Infinity;
    const anyWeight = state.arcs.some((arc) => arc.weight < 0) || (mayEnd && state.final < 0);
    const options = state.arcs.map((arc) =>
      `${anyWeight ? weigh(arc.weight) || '/1/ ' : ''}${arc.word} ${inline(arc.target)}`.trimEnd(),
    );
    if (mayEnd && !anyWeight) return `[ ${options.join(' | ')} ]`;
    if (mayEnd) options.push(`${weigh(state.final) || '/1/ '}${notation.empty}`);
    return options.length === 1 && !anyWeight ? (options[0] ?? '') : `( ${options.join(' | ')} )`;
  };
  const rules = states.flatMap((_, id) =>
    isNamed(id) && (id === 0 || (states[id]?.arcs.length ?? 0) > 0)
      ? [notation.rule(id, id === 0, body(id) || notation.empty)]
      : [],
  );
  return `${notation.head(name)}\n${rules.join('\n')}\n`;
}

/** The grammar as JSGF text, as the reference decoder reads it. @param name letters and digits */
export function toJsgf(automaton: Automaton, name: string): string {
  return write(automaton, name, JSGF);
}

/** The grammar as SRGS ABNF text. */
export function toAbnf(automaton: Automaton): string {
  return write(automaton, '', ABNF);
}
