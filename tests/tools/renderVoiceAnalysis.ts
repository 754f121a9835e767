/**
 * Speech to the vocoder's parameters: pitch by normalized cross-correlation and dynamic programming (as in Talkin, "A robust
 * algorithm for pitch tracking", 1995), spectral envelope free of the pitch by adaptive smoothing and cepstral liftering
 * (as in Morise, "CheapTrick, a spectral envelope estimator", Speech Communication 67, 2015), all-pole fit by
 * Levinson-Durbin, line spectral frequencies by bisection. From memory; the test measures the round trip.
 */
import { EMPHASIS, type Frame, HOP, ORDER, SAMPLE_RATE } from '../../src/speech/mouthClips/vocoder.ts';

const FFT_SIZE = 512;
const COS = Float64Array.from({ length: FFT_SIZE / 2 }, (_, k) => Math.cos((-2 * Math.PI * k) / FFT_SIZE));
const SIN = Float64Array.from({ length: FFT_SIZE / 2 }, (_, k) => Math.sin((-2 * Math.PI * k) / FFT_SIZE));
/** Points at which the line spectrum is looked for. */
const GRID = 512;
const LOWEST_PITCH = 110;
const HIGHEST_PITCH = 360;
/** Pitch that stands in where there is none, for the width of the smoothing. */
const UNVOICED_PITCH = 500;

/**
 * @param samples at 16 kHz, full scale 1
 * @param first first frame wanted, of those that begin every {@link HOP} samples
 * @param last one past the last; no more than there are whole frames
 */
export function analyze(samples: Float32Array, first = 0, last = Math.floor(samples.length / HOP)): Frame[] {
  const frames = Math.floor(samples.length / HOP);
  const pitch = trackPitch(samples, frames);
  const bands = [bandPass(samples, 0, 1000), bandPass(samples, 1000, 2500), bandPass(samples, 2500, 4500)];
  const filled = fillPitch(pitch);
  return Array.from({ length: last - first }, (_, offset) => {
    const index = first + offset;
    const center = index * HOP + HOP / 2;
    const hertz = pitch[index] ?? 0;
    const { lsf, gain } = envelope(samples, center, hertz || UNVOICED_PITCH);
    return {
      lsf,
      gain,
      pitch: filled[index] ?? 150,
      voicing: hertz === 0 ? 0 : voicingLevel(bands, center, SAMPLE_RATE / hertz),
    };
  });
}

/** Pitch is looked for at half the rate: what is below 1200 Hz has nothing more to say at the full one. */
const DECIMATION = 2;

function trackPitch(samples: Float32Array, frames: number): Float32Array {
  const low = bandPass(samples, 50, 1200).filter((_, i) => i % DECIMATION === 0);
  const rate = SAMPLE_RATE / DECIMATION;
  const minLag = Math.floor(rate / HIGHEST_PITCH);
  const maxLag = Math.ceil(rate / LOWEST_PITCH);
  const values = new Float64Array(maxLag + 2);
  let loudest = 1e-9;
  for (let frame = 0; frame < frames; frame++) loudest = Math.max(loudest, power(samples, frame * HOP, HOP));
  const candidates: { lag: number; cost: number }[][] = [];
  for (let frame = 0; frame < frames; frame++) {
    const length = 400 / DECIMATION;
    const start = Math.round((frame + 0.5) * (HOP / DECIMATION) - length / 2);
    const list = [{ lag: 0, cost: 0.52 }];
    if (power(samples, frame * HOP, HOP) > loudest * 1e-4) {
      for (let lag = minLag - 1; lag <= maxLag + 1; lag++) values[lag] = correlation(low, start, lag, length);
      for (let lag = minLag; lag <= maxLag; lag++) {
        const [before, here, after] = [values[lag - 1] ?? 0, values[lag] ?? 0, values[lag + 1] ?? 0];
        if (here < 0.3 || here < before || here <= after) continue;
        const exact = lag + (before - after) / (2 * (before - 2 * here + after) || 1);
        // A little dearer for long lags, or every multiple of the period would do as well.
        list.push({ lag: exact * DECIMATION, cost: 1 - here * (1 - (0.08 * lag) / maxLag) });
      }
    }
    candidates.push(list);
  }
  let costs: number[] = [];
  const from: number[][] = [];
  candidates.forEach((list, frame) => {
    const before = candidates[frame - 1] ?? [];
    const back: number[] = [];
    costs = list.map(({ lag, cost }, i) => {
      let best = frame === 0 ? 0 : Number.POSITIVE_INFINITY;
      before.forEach((other, j) => {
        const both = lag > 0 && other.lag > 0;
        const step = both ? 1.5 * Math.abs(Math.log2(lag / other.lag)) : lag > 0 || other.lag > 0 ? 0.18 : 0;
        const total = (costs[j] ?? 0) + step;
        if (total < best) {
          best = total;
          back[i] = j;
        }
      });
      return best + cost;
    });
    from.push(back);
  });
  const pitch = new Float32Array(frames);
  let index = costs.indexOf(Math.min(...costs));
  for (let frame = frames - 1; frame >= 0; frame--) {
    const lag = candidates[frame]?.[index]?.lag ?? 0;
    pitch[frame] = lag > 0 ? SAMPLE_RATE / lag : 0;
    index = from[frame]?.[index] ?? 0;
  }
  return pitch;
}

/** Pitch through unvoiced stretches as a straight line from one voiced frame to the next. */
function fillPitch(pitch: Float32Array): Float32Array {
  const filled = pitch.slice();
  const known = [...pitch.keys()].filter((i) => (pitch[i] ?? 0) > 0);
  if (known.length === 0) return filled.fill(180);
  for (let i = 0; i < filled.length; i++) {
    if ((pitch[i] ?? 0) > 0) continue;
    const after = known.find((k) => k > i) ?? known[known.length - 1] ?? 0;
    const before = known.findLast((k) => k < i) ?? after;
    const w = after > before && i < after ? (i - before) / (after - before) : 1;
    filled[i] = (pitch[before] ?? 180) * (1 - w) + (pitch[after] ?? 180) * w;
  }
  return filled;
}

function voicingLevel(bands: readonly Float32Array[], center: number, lag: number): number {
  const length = Math.round(2 * lag);
  let level = 0;
  for (const band of bands) {
    let best = 0;
    for (let shift = -2; shift <= 2; shift++) {
      best = Math.max(best, correlation(band, Math.round(center - length), Math.round(lag) + shift, length));
    }
    if (best < 0.45) break;
    level++;
  }
  return Math.max(1, level);
}

function envelope(samples: Float32Array, center: number, pitch: number): { lsf: Float32Array; gain: number } {
  const half = Math.min(FFT_SIZE / 2 - 1, Math.round((1.5 * SAMPLE_RATE) / pitch));
  const re = new Float64Array(FFT_SIZE);
  const im = new Float64Array(FFT_SIZE);
  let energy = 0;
  for (let i = -half; i <= half; i++) {
    const window = 0.5 + 0.5 * Math.cos((Math.PI * i) / (half + 1));
    energy += window * window;
    re[(i + FFT_SIZE) % FFT_SIZE] = (samples[center + i] ?? 0) * window;
  }
  fft(re, im);
  const spectrum = new Float64Array(FFT_SIZE / 2 + 1);
  for (let k = 0; k <= FFT_SIZE / 2; k++) {
    const tilt = 1 + EMPHASIS * EMPHASIS - 2 * EMPHASIS * Math.cos((2 * Math.PI * k) / FFT_SIZE);
    spectrum[k] = (((re[k] ?? 0) ** 2 + (im[k] ?? 0) ** 2) / energy) * tilt + 1e-12;
  }
  const smooth = smoothed(spectrum, ((2 / 3) * pitch * FFT_SIZE) / SAMPLE_RATE);
  // Lifter in the cepstrum: takes the pitch's ripple out, and gives back what the smoothing took.
  for (let k = 0; k <= FFT_SIZE / 2; k++) {
    const value = Math.log(smooth[k] ?? 1e-12);
    re[k] = value;
    re[(FFT_SIZE - k) % FFT_SIZE] = value;
  }
  im.fill(0);
  fft(re, im);
  const cepstrum = re.slice();
  for (let k = 0; k < FFT_SIZE; k++) {
    const quefrency = (k <= FFT_SIZE / 2 ? k : FFT_SIZE - k) / SAMPLE_RATE;
    const x = Math.PI * pitch * quefrency;
    const lifter = (x === 0 ? 1 : Math.sin(x) / x) * (1.3 - 0.3 * Math.cos(2 * x));
    re[k] = ((cepstrum[k] ?? 0) * lifter) / FFT_SIZE;
    im[k] = 0;
  }
  fft(re, im);
  for (let k = 0; k <= FFT_SIZE / 2; k++) {
    const value = Math.exp(re[k] ?? 0);
    re[k] = value;
    re[(FFT_SIZE - k) % FFT_SIZE] = value;
  }
  im.fill(0);
  fft(re, im);
  const r = Array.from({ length: ORDER + 1 }, (_, k) => (re[k] ?? 0) / FFT_SIZE);
  r[0] = (r[0] ?? 0) * 1.0001 + 1e-12;
  const { a, error } = levinson(r);
  return { lsf: lineSpectrum(a), gain: Math.sqrt(error) };
}

/** Running mean of a spectrum over `width` bins (any positive width), mirrored at both ends. */
function smoothed(spectrum: Float64Array, width: number): Float64Array {
  const last = spectrum.length - 1;
  const mirror = (k: number): number => spectrum[k < 0 ? -k : k > last ? 2 * last - k : k] ?? 0;
  const reach = Math.ceil(width) + 2;
  const sums = new Float64Array(spectrum.length + 2 * reach + 1);
  for (let i = 1; i < sums.length; i++) sums[i] = (sums[i - 1] ?? 0) + mirror(i - 1 - reach);
  const integral = (x: number): number => {
    const at = x + reach + 0.5;
    const i = Math.floor(at);
    return (sums[i] ?? 0) + (at - i) * ((sums[i + 1] ?? 0) - (sums[i] ?? 0));
  };
  return spectrum.map((_, k) => Math.max(1e-12, (integral(k + width / 2) - integral(k - width / 2)) / width));
}

function levinson(r: readonly number[]): { a: Float64Array; error: number } {
  const a = new Float64Array(ORDER + 1);
  a[0] = 1;
  let error = r[0] ?? 1e-12;
  for (let i = 1; i <= ORDER; i++) {
    let sum = r[i] ?? 0;
    for (let j = 1; j < i; j++) sum += (a[j] ?? 0) * (r[i - j] ?? 0);
    const k = -sum / error;
    const before = a.slice();
    for (let j = 1; j < i; j++) a[j] = (before[j] ?? 0) + k * (before[i - j] ?? 0);
    a[i] = k;
    error *= 1 - k * k;
  }
  return { a, error };
}

/**
 * Line spectral frequencies of A: the angles where P(z) = A(z) + z^-(p+1) A(1/z) and Q = A - … are zero, in turn. Without
 * their fixed zeros at half the rate and at nought, both are cosine polynomials in the angle.
 */
export function lineSpectrum(a: Float64Array): Float32Array {
  const p = new Float64Array(ORDER + 1);
  const q = new Float64Array(ORDER + 1);
  for (let i = 0; i <= ORDER; i++) {
    const forward = a[i] ?? 0;
    const backward = i >= 1 ? (a[ORDER + 1 - i] ?? 0) : 0;
    p[i] = forward + backward - (p[i - 1] ?? 0);
    q[i] = forward - backward + (q[i - 1] ?? 0);
  }
  // A finer search only where two zeros of one polynomial were too close to be told apart.
  for (const grid of [GRID, 8 * GRID, 64 * GRID]) {
    const lsf = zerosInTurn(p, q, grid);
    if (lsf !== null) return lsf;
  }
  throw new Error('lineSpectrum did not find all zeros');
}

function zerosInTurn(p: Float64Array, q: Float64Array, grid: number): Float32Array | null {
  const lsf = new Float32Array(ORDER);
  let found = 0;
  let previous = 0;
  let atPrevious = cosines(p, previous);
  for (let s = 1; s <= grid && found < ORDER; s++) {
    const here = (Math.PI * s) / grid;
    let atHere = cosines(found % 2 === 0 ? p : q, here);
    // Zeros of P and Q take turns; several may fall into one step.
    while (found < ORDER && atPrevious * atHere <= 0) {
      const polynomial = found % 2 === 0 ? p : q;
      let [lo, hi] = [previous, here];
      for (let i = 0; i < 20; i++) {
        const mid = (lo + hi) / 2;
        if (cosines(polynomial, mid) * atPrevious > 0) lo = mid;
        else hi = mid;
      }
      lsf[found++] = (lo + hi) / 2;
      previous = (lo + hi) / 2;
      const next = found % 2 === 0 ? p : q;
      atPrevious = cosines(next, previous);
      atHere = cosines(next, here);
    }
    previous = here;
    atPrevious = atHere;
  }
  return found === ORDER ? lsf : null;
}

/** A symmetric polynomial of degree {@link ORDER} on the unit circle, by Clenshaw's recurrence. */
function cosines(symmetric: Float64Array, angle: number): number {
  const half = ORDER / 2;
  const twice = 2 * Math.cos(angle);
  let [b1, b2] = [0, 0];
  for (let k = half; k >= 1; k--) {
    const b0 = 2 * (symmetric[half - k] ?? 0) + twice * b1 - b2;
    b2 = b1;
    b1 = b0;
  }
  return (symmetric[half] ?? 0) + (twice / 2) * b1 - b2;
}

function correlation(x: Float32Array, start: number, lag: number, length: number): number {
  const from = Math.max(0, start);
  const to = Math.min(start + length, x.length - lag);
  let xy = 0;
  let xx = 1e-9;
  let yy = 1e-9;
  for (let i = from; i < to; i++) {
    const a = x[i] ?? 0;
    const b = x[i + lag] ?? 0;
    xy += a * b;
    xx += a * a;
    yy += b * b;
  }
  return xy / Math.sqrt(xx * yy);
}

export function power(x: Float32Array, start: number, length: number): number {
  let sum = 0;
  for (let i = 0; i < length; i++) sum += (x[start + i] ?? 0) ** 2;
  return sum / length;
}

/** Linear-phase band-pass, windowed sinc, delay taken out. */
function bandPass(x: Float32Array, lowHz: number, highHz: number): Float32Array {
  const reach = 32;
  const taps = Float64Array.from({ length: reach + 1 }, (_, n) => {
    const ideal = (hz: number): number =>
      n === 0 ? (2 * hz) / SAMPLE_RATE : Math.sin((2 * Math.PI * hz * n) / SAMPLE_RATE) / (Math.PI * n);
    return (ideal(highHz) - ideal(lowHz)) * (0.54 + 0.46 * Math.cos((Math.PI * n) / (reach + 1)));
  });
  // Padded, so that no read falls outside: that would be many times slower.
  const padded = new Float64Array(x.length + 2 * reach);
  padded.set(x, reach);
  const y = new Float32Array(x.length);
  for (let i = 0; i < y.length; i++) {
    let sum = (taps[0] ?? 0) * (padded[i + reach] ?? 0);
    for (let k = 1; k <= reach; k++) sum += (taps[k] ?? 0) * ((padded[i + reach - k] ?? 0) + (padded[i + reach + k] ?? 0));
    y[i] = sum;
  }
  return y;
}

/** In-place radix-2 FFT of length {@link FFT_SIZE}. */
function fft(re: Float64Array, im: Float64Array): void {
  const n = FFT_SIZE;
  for (let i = 1, j = 0; i < n; i++) {
    let bit = n >> 1;
    for (; j & bit; bit >>= 1) j ^= bit;
    j ^= bit;
    if (i < j) {
      [re[i], re[j]] = [re[j] ?? 0, re[i] ?? 0];
      [im[i], im[j]] = [im[j] ?? 0, im[i] ?? 0];
    }
  }
  for (let size = 2; size <= n; size <<= 1) {
    const half = size >> 1;
    const stride = FFT_SIZE / size;
    for (let k = 0; k < half; k++) {
      const cos = COS[k * stride] ?? 0;
      const sin = SIN[k * stride] ?? 0;
      for (let i = k; i < n; i += size) {
        const j = i + half;
        const xr = (re[j] ?? 0) * cos - (im[j] ?? 0) * sin;
        const xi = (re[j] ?? 0) * sin + (im[j] ?? 0) * cos;
        re[j] = (re[i] ?? 0) - xr;
        im[j] = (im[i] ?? 0) - xi;
        re[i] = (re[i] ?? 0) + xr;
        im[i] = (im[i] ?? 0) + xi;
      }
    }
  }
}
