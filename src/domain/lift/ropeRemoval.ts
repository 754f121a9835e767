/**
 * When a wire rope has to go. The rules bind cranes, slings and hoists, not this trailer; they make a sensible stop line.
 * The maker's own criterion comes first.
 */
import { LIFT, ROPE_WIRES } from '../judge/numbers/lift.ts';
import type { LiftProfile } from '../unit/unit.ts';

export interface RopeFindings {
  /** Broken wires in the worst lay. */
  readonly brokenPerLay: number;
  /** Of those in one strand; null where not counted: all may be in one. */
  readonly brokenInStrand: number | null;
  /** Broken over eight diameters; null where not counted. */
  readonly brokenPerEight: number | null;
  readonly construction: LiftProfile['cableConstruction'];
  readonly nominalM: number | null;
  readonly measuredM: number | null;
  /** Worn part of an outer wire's diameter, 0 to 1; null where not seen. */
  readonly outerWireWorn: number | null;
  readonly kinked: boolean;
  readonly corroded: boolean;
}

/**
 * Broken wires over eight diameters from which a construction has to go: more than a tenth of all.
 * Source: 29 CFR 1926.251(c)(4)(iv) (from memory). 7x19: 14; 6x19: 12.
 */
export function wiresPerEight(construction: NonNullable<LiftProfile['cableConstruction']>): number {
  return Math.floor(ROPE_WIRES[construction] * LIFT.wireShare.si + 1e-9) + 1;
}

/** Diameter below which a cable has to go, m. Source: 29 CFR 1926.1413(a)(2)(ii)(B) (from memory), 5 percent. */
export function leastDiameter(nominalM: number): number {
  return nominalM * (1 - LIFT.diameterLoss.si);
}

/** About one lay, m: where the wires are counted. */
export function layLength(diameterM: number): number {
  return diameterM * LIFT.lay.value;
}

/** Why the rope has to go, each as a sentence; empty where nothing says so. */
export function removalReasons(findings: RopeFindings): readonly string[] {
  const { brokenPerLay, brokenInStrand, brokenPerEight, construction, nominalM, measuredM, outerWireWorn } = findings;
  const reasons: string[] = [];
  if (brokenPerLay >= LIFT.wiresPerLay.value) reasons.push('Six or more broken wires within one turn of a strand.');
  else if ((brokenInStrand ?? brokenPerLay) >= LIFT.wiresPerStrand.value) {
    reasons.push(
      brokenInStrand === null
        ? 'Three or more broken wires, which may be in one strand.'
        : 'Three or more broken wires in one strand.',
    );
  }
  if (construction !== null && brokenPerEight !== null && brokenPerEight >= wiresPerEight(construction)) {
    reasons.push('More than a tenth of its wires broken within eight diameters.');
  }
  if (nominalM !== null && measuredM !== null && measuredM < leastDiameter(nominalM) * (1 - 1e-9)) {
    reasons.push('Thinner than new by more than five percent.');
  }
  if (outerWireWorn !== null && outerWireWorn >= LIFT.outerWire.value * (1 - 1e-9)) {
    reasons.push('A third of an outer wire worn away.');
  }
  if (findings.kinked) reasons.push('A kink, a crushed place or an open strand.');
  if (findings.corroded) reasons.push('Pitted by rust.');
  return reasons;
}
