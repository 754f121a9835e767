/** What a torque does to a stud. Source: T = K D F, the short form of Shigley and Machinery's Handbook. */
import { LUGS } from '../judge/numbers/lugs.ts';

export type Thread = 'dry' | 'oiled' | 'anti-seize';

const FACTORS: Readonly<Record<Thread, number>> = {
  dry: LUGS.nutDry.value,
  oiled: LUGS.nutOiled.value,
  'anti-seize': LUGS.nutAntiSeize.value,
};

/**
 * Clamp force of a bolted joint, N.
 * @param torqueNm N m, >= 0
 * @param diameterM nominal diameter, m, > 0
 * @param factor nut factor K, > 0
 * @throws RangeError out of range
 */
export function clampLoad(torqueNm: number, diameterM: number, factor: number): number {
  if (!(torqueNm >= 0 && diameterM > 0 && factor > 0) || !Number.isFinite(torqueNm + diameterM + factor)) {
    throw new RangeError('clampLoad requires torque >= 0, diameter > 0 and factor > 0');
  }
  return torqueNm / (factor * diameterM);
}

/** Torque for a clamp force, N m. Inverse of {@link clampLoad}. @throws RangeError out of range */
export function torqueFor(forceN: number, diameterM: number, factor: number): number {
  if (!(forceN >= 0 && diameterM > 0 && factor > 0) || !Number.isFinite(forceN + diameterM + factor)) {
    throw new RangeError('torqueFor requires force >= 0, diameter > 0 and factor > 0');
  }
  return forceN * diameterM * factor;
}

export interface ClampEstimate {
  readonly lowN: number;
  readonly likelyN: number;
  readonly highN: number;
}

/** Clamp force of a stud with its uncertainty: scatter of dry threads (K 0.15 to 0.25) and the wrench's own error. */
export function clampEstimate(torqueNm: number, diameterM: number, thread: Thread = 'dry'): ClampEstimate {
  const wrench = LUGS.wrenchError.si;
  const likely = FACTORS[thread];
  const low = likely * (LUGS.nutDryHigh.value / LUGS.nutDry.value);
  const high = likely * (LUGS.nutDryLow.value / LUGS.nutDry.value);
  return {
    lowN: clampLoad(torqueNm * (1 - wrench), diameterM, low),
    likelyN: clampLoad(torqueNm, diameterM, likely),
    highN: clampLoad(torqueNm * (1 + wrench), diameterM, high),
  };
}

/**
 * Tensile stress area of an inch thread, m². Source: At = 0.7854 (D - 0.9743 / n)², Machinery's Handbook.
 * @param diameterIn nominal, in, > 0
 * @param threadsPerInch > 0
 */
export function stressArea(diameterIn: number, threadsPerInch: number): number {
  if (!(diameterIn > 0 && threadsPerInch > 0) || diameterIn * threadsPerInch <= 0.9743) {
    throw new RangeError('stressArea requires a thread');
  }
  return (Math.PI / 4) * ((diameterIn - 0.9743 / threadsPerInch) * 0.0254) ** 2;
}

/** Turns by which a nut must be threaded on: one stud diameter at least. Source: trailer manual. */
export function turnsNeeded(diameterIn: number, threadsPerInch: number): number {
  return LUGS.engagement.value * diameterIn * threadsPerInch;
}
