/** What came of taking in a file. */
export type TakenFile =
  /** `sentence` says what to do; nothing was taken. */
  | { readonly kind: 'refused'; readonly sentence: string }
  | {
      readonly kind: 'done';
      readonly units: number;
      readonly rounds: number;
      readonly entries: number;
      readonly events: number;
      readonly warnings: readonly string[];
    };
