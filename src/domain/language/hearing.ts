/** What a recogniser reports, whichever it is. */
export interface Hypothesis {
  readonly transcript: string;
  /** 0..1, or null where the provider gives none. Scales differ between providers. */
  readonly confidence: number | null;
}

export interface Hearing {
  /** Best first, at least one. */
  readonly hypotheses: readonly Hypothesis[];
  readonly provider: 'browser' | 'built-in' | 'scripted' | 'typed';
  /** Id of the stored clip, or null. */
  readonly clip: string | null;
}
