/** Written by tests/tools/trainConfidence.ts. */
export const CONFIDENCE_WEIGHTS: readonly number[] = [1.2, -0.9, -0.5, 0.35, 0.35, 1.2, 0.3, 0, 0, 0, 0, 0.2, 0];
