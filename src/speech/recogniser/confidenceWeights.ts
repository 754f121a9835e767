/** Written by tests/tools/trainConfidence.ts. */
export const CONFIDENCE_WEIGHTS: readonly number[] = [
  -8.1704, 0.053542, -3.0006, 0.44134, 1.045, -1.3399, -0.018798, 9.4001, -2.1694, -2.6053, -3.1123, 0.51428, -0.26245,
];
