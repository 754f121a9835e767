/**
 * A heater test: from two or more inside temperatures to how fast, how far, and whether it holds tonight.
 * First-order warming: T(t) = Tend - (Tend - T0) exp(-t / tau); Tend - Toutside does not change with the weather.
 */
import { HEAT } from '../judge/numbers/heat.ts';

export interface InsideReading {
  /** Seconds since the heater was lit, rising. */
  readonly s: number;
  readonly temperatureK: number;
}

/** Inside temperatures that a thermometer shows, K; anything else was misheard. */
const COLDEST_K = 180;
const WARMEST_K = 400;

/** Two or more believable readings, a second apart at least. */
export function areSound(readings: readonly InsideReading[]): boolean {
  return (
    readings.length >= 2 &&
    readings.every(
      ({ s, temperatureK }, index) =>
        Number.isFinite(s) &&
        temperatureK > COLDEST_K &&
        temperatureK < WARMEST_K &&
        (index === 0 || s - (readings[index - 1]?.s ?? Number.NaN) >= 1),
    )
  );
}

/** Rise from the first to the last reading, K/s; null where the readings are not sound. */
export function warmingRate(readings: readonly InsideReading[]): number | null {
  const first = readings[0];
  const last = readings.at(-1);
  if (!first || !last || !areSound(readings)) return null;
  return (last.temperatureK - first.temperatureK) / (last.s - first.s);
}

export type WarmUpFit =
  | {
      readonly ok: true;
      /** Where it would end, in the outside air of the test, K. */
      readonly endK: number;
      /** Range of that for readings off by half a degree Fahrenheit; `high` may be infinite. */
      readonly endLowK: number;
      readonly endHighK: number;
      readonly tauS: number;
    }
  | { readonly ok: false; readonly sentence: string };

const NOT_YET = 'It can not be told yet where it will end. Read it again in ten minutes.';

/**
 * Least-squares fit of first-order warming.
 *
 * Method: for a given tau the model is linear in its two other figures; tau is found on a logarithmic grid from a twentieth
 * to twenty times the time of the test and refined by golden section. Exact for three readings at equal intervals, where
 * Tend = (T0 T2 - T1²) / (T0 + T2 - 2 T1).
 * @param readings three or more, times rising
 */
export function fitWarmUp(readings: readonly InsideReading[]): WarmUpFit {
  const best = leastSquares(readings);
  if (!best) return { ok: false, sentence: NOT_YET };
  const spread = HEAT.fitSpread.si;
  const ends = [spread, -spread].map((shift) => {
    const shifted = readings.map((reading, index) =>
      index === readings.length - 1 ? { ...reading, temperatureK: reading.temperatureK + shift } : reading,
    );
    return leastSquares(shifted)?.endK ?? (shift > 0 ? Number.POSITIVE_INFINITY : (readings.at(-1)?.temperatureK ?? best.endK));
  });
  return {
    ok: true,
    endK: best.endK,
    tauS: best.tauS,
    endLowK: Math.min(best.endK, ...ends),
    endHighK: Math.max(best.endK, ...ends),
  };
}

interface Fitted {
  readonly endK: number;
  readonly tauS: number;
  readonly residual: number;
}

const GRID = 160;
const WIDEST = 20;

function leastSquares(readings: readonly InsideReading[]): Fitted | null {
  const first = readings[0];
  const last = readings.at(-1);
  if (!first || !last || readings.length < 3 || !areSound(readings)) return null;
  const span = last.s - first.s;
  const at = (logTau: number) => linear(readings, first.s, Math.exp(logTau));
  const low = Math.log(span / WIDEST);
  const high = Math.log(span * WIDEST);
  let bestIndex = 0;
  let best = Number.POSITIVE_INFINITY;
  for (let index = 0; index <= GRID; index += 1) {
    const { residual } = at(low + ((high - low) * index) / GRID);
    if (residual < best) {
      best = residual;
      bestIndex = index;
    }
  }
  // At either end of the grid the readings lie on a straight line, or jumped at once: no curve to be seen.
  if (bestIndex === 0 || bestIndex === GRID) return null;
  const step = (high - low) / GRID;
  const logTau = goldenSection((x) => at(x).residual, low + (bestIndex - 1) * step, low + (bestIndex + 1) * step);
  const { end, drop, residual } = at(logTau);
  // Warming ends above its start; cooling is no heater test.
  return drop < 0 && end > last.temperatureK ? { endK: end, tauS: Math.exp(logTau), residual } : null;
}

/** Least squares of T = end + drop * exp(-(s - s0) / tau). */
function linear(readings: readonly InsideReading[], s0: number, tauS: number) {
  const n = readings.length;
  const decays = readings.map(({ s }) => Math.exp(-(s - s0) / tauS));
  const meanX = decays.reduce((sum, x) => sum + x, 0) / n;
  const meanY = readings.reduce((sum, { temperatureK }) => sum + temperatureK, 0) / n;
  let xx = 0;
  let xy = 0;
  for (const [index, { temperatureK }] of readings.entries()) {
    const x = (decays[index] ?? 0) - meanX;
    xx += x * x;
    xy += x * (temperatureK - meanY);
  }
  const drop = xx === 0 ? 0 : xy / xx;
  const end = meanY - drop * meanX;
  const residual = readings.reduce(
    (sum, { temperatureK }, index) => sum + (temperatureK - end - drop * (decays[index] ?? 0)) ** 2,
    0,
  );
  return { end, drop, residual };
}

function goldenSection(f: (x: number) => number, from: number, to: number): number {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let a = from;
  let b = to;
  let c = b - ratio * (b - a);
  let d = a + ratio * (b - a);
  for (let step = 0; step < 80; step += 1) {
    if (f(c) < f(d)) b = d;
    else a = c;
    c = b - ratio * (b - a);
    d = a + ratio * (b - a);
  }
  return (a + b) / 2;
}

export interface ColdNight {
  /** Where the heater would end tonight, running all the time, K. */
  readonly endK: number;
  /** Part of the time it burns to hold the wanted temperature; above 1 it can not. */
  readonly duty: number;
  readonly holds: boolean;
}

/**
 * What a fitted test says of another outside temperature: the gain over outside stays the same.
 * @param endK from {@link fitWarmUp}; @param outsideK during the test; @param tonightK forecast
 */
export function tonight(endK: number, outsideK: number, tonightK: number, wantedK: number = HEAT.wanted.si): ColdNight | null {
  const gain = endK - outsideK;
  if (!(gain > 0) || !Number.isFinite(gain + tonightK + wantedK)) return null;
  const duty = Math.max(0, (wantedK - tonightK) / gain);
  return { endK: tonightK + gain, duty, holds: duty <= 1 };
}

export interface Shell {
  /** Heat lost for each kelvin, W/K: areas over resistances, plus air change. */
  readonly lossWPerK: number;
  /** Heat kept for each kelvin, J/K. */
  readonly heldJPerK: number;
}

/** Inside temperature after a time with a heater of known output, K. */
export function insideAfter(
  { lossWPerK, heldJPerK }: Shell,
  outputW: number,
  outsideK: number,
  startK: number,
  s: number,
): number {
  const end = outsideK + outputW / lossWPerK;
  return end - (end - startK) * Math.exp((-s * lossWPerK) / heldJPerK);
}

/** Heat lost with the air that leaves, W/K: 0.018 BTU per cubic foot and °F for each change an hour. Handbook value. */
export function airChangeLoss(volumeM3: number, changesPerHour: number): number {
  const perCubicFoot = (0.018 * 1055.05585262 * 1.8) / 3600;
  return perCubicFoot * changesPerHour * (volumeM3 / 0.3048 ** 3);
}

export interface TestComparison {
  /** Median rise of the earlier tests over the same minutes, K. */
  readonly usualK: number;
  /** This rise over the usual one. */
  readonly ratio: number;
  readonly sentence: string;
}

/**
 * This test against the unit's earlier ones over the same minutes. Weather is not taken out here; the trend does that.
 * @returns null with fewer than three earlier tests
 */
export function compareTests(riseK: number, earlierK: readonly number[]): TestComparison | null {
  const sorted = earlierK.filter((rise) => Number.isFinite(rise)).sort((a, b) => a - b);
  if (sorted.length < 3 || !Number.isFinite(riseK)) return null;
  const middle = Math.floor(sorted.length / 2);
  const usualK = sorted.length % 2 === 1 ? (sorted[middle] ?? 0) : ((sorted[middle - 1] ?? 0) + (sorted[middle] ?? 0)) / 2;
  if (!(usualK > 0)) return null;
  const ratio = riseK / usualK;
  const sentence =
    ratio < 0.6
      ? 'It warms much more slowly than it used to. Look at gas, battery and burner.'
      : ratio < 0.8
        ? 'It warms more slowly than it used to.'
        : 'It warms as it used to.';
  return { usualK, ratio, sentence };
}
