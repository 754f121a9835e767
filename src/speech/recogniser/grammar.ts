/**
 * What may be said, as a tree of sequences and weighted choices over words. Everything that is listened for is one of these:
 * built from a request, or read from JSGF text.
 */
export type Rule =
  | { readonly kind: 'word'; readonly word: string }
  | { readonly kind: 'sequence'; readonly parts: readonly Rule[] }
  /** `weight` is a natural log, 0 or below; alternatives of the same weight are equally likely. */
  | { readonly kind: 'choice'; readonly options: readonly { readonly rule: Rule; readonly weight: number }[] }
  /** One or more times, with something between. */
  | { readonly kind: 'repeat'; readonly rule: Rule; readonly between: Rule; readonly weight: number };

export const EMPTY: Rule = { kind: 'sequence', parts: [] };

export function word(text: string): Rule {
  return { kind: 'word', word: text };
}

/** The words of a phrase one after the other. */
export function phrase(text: string): Rule {
  return sequence(...wordsOf(text).map(word));
}

export function sequence(...parts: readonly Rule[]): Rule {
  return parts.length === 1 && parts[0] ? parts[0] : { kind: 'sequence', parts };
}

/** Any one of them, all equally likely. */
export function oneOf(...rules: readonly Rule[]): Rule {
  return rules.length === 1 && rules[0] ? rules[0] : { kind: 'choice', options: rules.map((rule) => ({ rule, weight: 0 })) };
}

/** Any one of them, each with its own log weight. */
export function weighted(...options: readonly (readonly [rule: Rule, weight: number])[]): Rule {
  return { kind: 'choice', options: options.map(([rule, weight]) => ({ rule, weight })) };
}

export function phrases(texts: readonly string[]): Rule {
  return oneOf(...texts.map(phrase));
}

/** @param weight log weight of saying it at all */
export function optional(rule: Rule, weight = 0): Rule {
  return weighted([rule, weight], [EMPTY, 0]);
}

/** @param weight log weight of each further time */
export function oneOrMore(rule: Rule, weight = 0): Rule {
  return { kind: 'repeat', rule, between: EMPTY, weight };
}

/** A rule, or several of it with `between` between them. */
export function separated(rule: Rule, between: Rule): Rule {
  return { kind: 'repeat', rule, between, weight: 0 };
}

/**
 * Text as the recogniser's words: lower case, hyphens open, punctuation gone, apostrophes kept.
 * @example wordsOf("Sixty-two, it's") is ['sixty', 'two', "it's"]
 */
export function wordsOf(text: string): readonly string[] {
  return text
    .toLowerCase()
    .replace(/[’]/g, "'")
    .split(/[^a-z0-9'+]+/)
    .filter((part) => part !== '');
}
