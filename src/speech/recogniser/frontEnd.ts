/** Numbers of the front end, as the acoustic model's own `feat.params` gives them (the build of the model compares them). */
export const FRONT_END = {
  rateHz: 16_000,
  /** Samples from one frame to the next: 10 ms. */
  shift: 160,
  /** 25.625 ms. */
  window: 410,
  fftSize: 512,
  preEmphasis: 0.97,
  filters: 25,
  lowHz: 130,
  highHz: 6800,
  cepstra: 13,
  lifter: 22,
} as const;

export const FRAMES_PER_SECOND = FRONT_END.rateHz / FRONT_END.shift;

/**
 * Added to every filter's energy (16-bit scale) before the logarithm. The reference adds 1e-4; then digital silence, which
 * only recordings have, pulls the cepstral mean away. This is far below any microphone's own noise.
 */
export const ENERGY_FLOOR = 1e4;
