/**
 * Speech from parameters: a source of pulses and noise through an all-pole filter (linear prediction), the filter given as
 * line spectral frequencies. Small enough to ship hours of speech in a megabyte, plain arithmetic in every browser, and a
 * voice that can be slowed or joined without a click, because parameters are joined and not samples.
 *
 * Sources: Makhoul, "Linear prediction: a tutorial review", Proc. IEEE 63 (1975); Itakura's line spectrum as in Soong and
 * Juang, ICASSP 1984; pulse above noise by frequency as in Makhoul et al., "A mixed-source model", ICASSP 1978. From memory.
 */

export const SAMPLE_RATE = 16_000;
/** Filter order: two for each kilohertz of bandwidth, and two more for the tilt. */
export const ORDER = 22;
/** Samples from one frame to the next: 10 ms. */
export const HOP = 160;
/** First-order emphasis of the highs before analysis, taken back after synthesis. */
export const EMPHASIS = 0.9;
/** Up to where a frame is voiced, by level; noise fills the rest. Level 0 is all noise. */
export const VOICED_UP_TO_HZ: readonly number[] = [0, 1000, 2500, 7900];

/** 10 ms of speech. */
export interface Frame {
  /** Line spectral frequencies in radians per sample: rising, strictly between 0 and π. Length {@link ORDER}. */
  readonly lsf: Float32Array;
  /** Level of the filter's input, root mean square, full scale 1. */
  readonly gain: number;
  /** Fundamental in hertz; meant also through unvoiced frames, so that it can be interpolated. */
  readonly pitch: number;
  /** Index into {@link VOICED_UP_TO_HZ}. */
  readonly voicing: number;
}

/** Pole of the filter that takes the mean out: 3 dB down at about 60 Hz. */
const DC_BLOCK = 0.977;

/** Interpolation happens this often: 2.5 ms. */
const SUBFRAME = 40;
/** Length of the filters that part pulses from noise; odd, so that their delay is whole. */
const TAPS = 33;
const MIDDLE = (TAPS - 1) / 2;
/** A pulse seldom falls on a sample; it is placed to within this part of one. */
const PHASES = 16;

/** `[level][phase]`: one pulse, band-limited to what is voiced, that comes `phase / PHASES` of a sample late. */
const PULSES: readonly (readonly Float64Array[])[] = VOICED_UP_TO_HZ.map((cutoff) =>
  Array.from({ length: PHASES }, (_, phase) => lowPass(cutoff, phase / PHASES)),
);

/** Low-pass by windowed sinc (Hamming), unity gain at zero, delayed by `late` samples beyond the middle. */
function lowPass(cutoffHz: number, late: number): Float64Array {
  const taps = new Float64Array(TAPS);
  if (cutoffHz === 0) return taps;
  let sum = 0;
  for (let i = 0; i < TAPS; i++) {
    const n = i - MIDDLE - late;
    const x = (n * 2 * cutoffHz) / SAMPLE_RATE;
    const sinc = x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
    taps[i] = sinc * Math.max(0, 0.54 + 0.46 * Math.cos((Math.PI * n) / (MIDDLE + 1)));
    sum += taps[i] ?? 0;
  }
  return taps.map((tap) => tap / sum);
}

/**
 * Predictor polynomial of a set of line spectral frequencies: A(z) = (P(z) + Q(z)) / 2, exact.
 * @param lsf rising, in (0, π), length {@link ORDER}
 * @param a receives A's coefficients a[1] … a[ORDER] at 0 … ORDER-1
 */
export function predictorOf(lsf: ArrayLike<number>, a: Float64Array): void {
  const p = symmetricPart(lsf, 0);
  const q = symmetricPart(lsf, 1);
  // P has the extra factor (1 + z⁻¹), Q has (1 - z⁻¹), for even orders.
  for (let i = ORDER; i > 0; i--) {
    p[i] = (p[i] ?? 0) + (p[i - 1] ?? 0);
    q[i] = (q[i] ?? 0) - (q[i - 1] ?? 0);
  }
  for (let i = 1; i <= ORDER; i++) a[i - 1] = ((p[i] ?? 0) + (q[i] ?? 0)) / 2;
}

function symmetricPart(lsf: ArrayLike<number>, from: number): Float64Array {
  const polynomial = new Float64Array(ORDER + 1);
  polynomial[0] = 1;
  let degree = 0;
  for (let k = from; k < ORDER; k += 2) {
    const middle = -2 * Math.cos(lsf[k] ?? 0);
    degree += 2;
    for (let i = degree; i > 0; i--) {
      polynomial[i] = (polynomial[i] ?? 0) + middle * (polynomial[i - 1] ?? 0) + (i > 1 ? (polynomial[i - 2] ?? 0) : 0);
    }
  }
  return polynomial;
}

/**
 * Frames as samples at {@link SAMPLE_RATE}. Deterministic: the noise has a fixed seed.
 * @param rate 1 as recorded, 2 twice as fast; the pitch stays. 0.5 … 2.
 * @returns frames.length * HOP / rate samples (rounded to whole subframes), within ±1 unless the frames are louder than full scale
 * @throws RangeError when the rate is not between 0.25 and 4
 */
export function synthesize(frames: readonly Frame[], rate = 1): Float32Array {
  if (!(rate >= 0.25 && rate <= 4)) throw new RangeError('synthesize requires a rate from 0.25 to 4');
  const subframes = Math.round((frames.length * HOP) / rate / SUBFRAME);
  const out = new Float32Array(subframes * SUBFRAME);
  const first = frames[0];
  if (first === undefined) return out;

  const lsf = new Float64Array(ORDER);
  const a = new Float64Array(ORDER);
  const memory = new Float64Array(ORDER);
  const pulses = new Float64Array(TAPS);
  const noises = new Float64Array(TAPS);
  let head = 0;
  let at = 0;
  let phase = 0;
  let seed = 22_222;
  let emphasis = 0;
  let before = 0;
  let level0 = 0;

  for (let s = 0; s < subframes; s++) {
    const place = Math.min(((s + 0.5) * SUBFRAME * rate) / HOP - 0.5, frames.length - 1);
    const left = Math.max(0, Math.floor(place));
    const f0 = frames[left] ?? first;
    const f1 = frames[Math.min(left + 1, frames.length - 1)] ?? f0;
    const w = Math.min(1, Math.max(0, place - left));
    for (let k = 0; k < ORDER; k++) lsf[k] = (f0.lsf[k] ?? 0) * (1 - w) + (f1.lsf[k] ?? 0) * w;
    predictorOf(lsf, a);
    // Levels are heard by their logarithm; silence would have none.
    const gain = f0.gain > 0 && f1.gain > 0 ? f0.gain ** (1 - w) * f1.gain ** w : w < 0.5 ? f0.gain : f1.gain;
    const step = (f0.pitch * (1 - w) + f1.pitch * w) / SAMPLE_RATE;
    const level = PULSES[w < 0.5 ? f0.voicing : f1.voicing] ?? [];
    const voiced = level[0] ?? new Float64Array(TAPS);

    for (let n = 0; n < SUBFRAME; n++) {
      phase += step;
      if (phase >= 1) {
        phase -= 1;
        // The pulse fell `phase / step` samples ago; it is written one sample ahead of that, so that it is never in the past.
        const shape = level[Math.min(PHASES - 1, Math.floor((1 - phase / step) * PHASES))] ?? voiced;
        const strength = Math.sqrt(1 / step);
        for (let i = 0, j = head; i < TAPS; i++, j = j + 1 === TAPS ? 0 : j + 1) {
          pulses[j] = (pulses[j] ?? 0) + strength * (shape[i] ?? 0);
        }
      }
      seed = (Math.imul(seed, 1_664_525) + 1_013_904_223) | 0;
      noises[head] = (seed / 0x8000_0000) * Math.sqrt(3);
      // Noise where there are no pulses: all of it, delayed as much as the low-pass delays, less what the low-pass lets through.
      let excitation = (pulses[head] ?? 0) + (noises[head >= MIDDLE ? head - MIDDLE : head - MIDDLE + TAPS] ?? 0);
      for (let i = 0, j = head; i < TAPS; i++, j = j === 0 ? TAPS - 1 : j - 1) {
        excitation -= (voiced[i] ?? 0) * (noises[j] ?? 0);
      }
      pulses[head] = 0;
      head = head + 1 === TAPS ? 0 : head + 1;

      let y = gain * excitation;
      for (let k = 0, j = at; k < ORDER; k++, j = j === 0 ? ORDER - 1 : j - 1) y -= (a[k] ?? 0) * (memory[j] ?? 0);
      at = (at + 1) % ORDER;
      memory[at] = y;
      emphasis = y + EMPHASIS * emphasis;
      // A train of pulses has a mean, and the emphasis makes much of it; no voice and no loudspeaker has.
      level0 = emphasis - before + DC_BLOCK * level0;
      before = emphasis;
      out[s * SUBFRAME + n] = level0;
    }
  }
  return out;
}
