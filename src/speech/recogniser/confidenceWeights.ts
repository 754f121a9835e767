/** Written by tests/tools/trainConfidence.ts. */
export const CONFIDENCE_WEIGHTS: readonly number[] = [
  -2.3366, -0.40437, -3.5251, 0.30441, 1.1771, -0.8262, -0.12708, 3.6728, -0.94051, -1.5226, -1.996, 0.1461, 0.21534,
];
