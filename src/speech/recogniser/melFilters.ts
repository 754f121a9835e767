/**
 * Triangular filters of unit area, equally spaced in mel between two frequencies, their edges rounded to FFT bins.
 * Source: Davis and Mermelstein 1980; mel = 2595 log10(1 + f/700); rounding and scaling as the CMU Sphinx front end does.
 */
import { FRONT_END } from './frontEnd.ts';

const mel = (hz: number) => 2595 * Math.log10(1 + hz / 700);
const fromMel = (value: number) => 700 * (10 ** (value / 2595) - 1);

export interface MelFilter {
  readonly firstBin: number;
  readonly weights: Float64Array;
  /** Middle of the triangle, Hz. */
  readonly centerHz: number;
}

export function createMelFilters(): readonly MelFilter[] {
  const { rateHz, fftSize, filters, lowHz, highHz } = FRONT_END;
  const binHz = rateHz / fftSize;
  const low = mel(lowHz);
  const width = (mel(highHz) - low) / (filters + 1);
  const edge = (index: number) => Math.floor(fromMel(low + index * width) / binHz + 0.5) * binHz;
  return Array.from({ length: filters }, (_, index) => {
    const [left, center, right] = [edge(index), edge(index + 1), edge(index + 2)] as const;
    const firstBin = Math.ceil(left / binHz);
    const lastBin = Math.floor(right / binHz);
    const area = 2 / (right - left);
    const weights = Float64Array.from({ length: lastBin - firstBin + 1 }, (_, offset) => {
      const hz = (firstBin + offset) * binHz;
      return area * Math.max(0, Math.min((hz - left) / (center - left), (right - hz) / (right - center)));
    });
    return { firstBin, weights, centerHz: center };
  });
}
