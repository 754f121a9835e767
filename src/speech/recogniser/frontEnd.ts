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
 * Added to every filter's energy before the logarithm, as a part of the utterance's loud energies: what lies this far below
 * speech carries none of it, and digital silence would pull the cepstral mean away. The reference adds a constant 1e-4 (16-bit
 * scale). Ten times more hides the frication of an "f" ("five" becomes "nine"), three times less loses 5 % in wind at 5 dB.
 */
export const RELATIVE_FLOOR = 3e-4;

/** Never less than this (16-bit scale): far below any microphone's own noise. */
export const LEAST_FLOOR = 1e4;
