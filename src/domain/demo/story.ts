/** The made-up truth behind a demo unit's readings: what wears, leaks, fades and slows, and the weather over it. */
import type { Position } from '../checks/expects.ts';
import { pressureAtTemperature, REFERENCE_K, SEA_LEVEL_PA } from '../history/normalize.ts';
import { fromSI, toSI } from '../quantity/units.ts';
import { type Unit, wheelPositions } from '../unit/unit.ts';
import type { Random } from './random.ts';

export const DAY_MS = 86_400_000;
const YEAR_DAYS = 365.2425;

export interface WheelTruth {
  /** Gauge pressure as it would be at 20 °C. */
  pressurePsi: number;
  leakPsiPerWeek: number;
  treadThirtySeconds: number;
  lugLoosens: boolean;
}

export interface Truth {
  readonly wheels: Map<Position, WheelTruth>;
  readonly placardPsi: number;
  batteryVolts: number;
  /** Change of the rested voltage a year. */
  readonly batteryFade: number;
  /** Rise in ten minutes at first, °F, and its change a year. */
  readonly furnaceRise: number;
  readonly furnaceSlows: number;
  readonly pushInches: number;
}

/** Each demo unit has one thing that goes wrong slowly, in turn; the first two have two. */
export function beginStory(unit: Unit, index: number, years: number, random: Random): Truth {
  const positions = wheelPositions(unit.axles);
  const placardPsi = unit.tires.placardColdPa === null ? 65 : Math.round(unit.tires.placardColdPa / toSI(1, 'psi'));
  const leaking = index % 3 === 0 ? positions.at(-1) : undefined;
  const loosening = index % 3 === 1 ? positions[0] : undefined;
  const wheels = new Map(
    positions.map((position): [Position, WheelTruth] => [
      position,
      {
        pressurePsi: filled(placardPsi, WINTER_F, random),
        leakPsiPerWeek: position === leaking ? 1.1 : 0.03 + 0.03 * random.uniform(),
        treadThirtySeconds: 9,
        lugLoosens: position === loosening,
      },
    ]),
  );
  const lithium = unit.battery.kind === 'lifepo4';
  return {
    wheels,
    placardPsi,
    batteryVolts: lithium ? 13.3 : 12.72,
    batteryFade: index % 3 === 1 && !lithium ? -0.45 / Math.max(1, years) : -0.005,
    furnaceRise: 26,
    furnaceSlows: index % 3 === 2 ? -9 / Math.max(1, years) : 0,
    pushInches: 2 + 0.5 * random.uniform(),
  };
}

/** A cold morning on which people fill their tires, °F. */
export const WINTER_F = 5;

/**
 * What a tire filled to its placard in the cold would read at 20 °C, a pound over to be on the safe side.
 * @param outsideF air at the filling
 */
export function filled(placardPsi: number, outsideF: number, random: Random): number {
  const shown = toSI(placardPsi + 1 + 0.4 * random.normal(), 'psi');
  return fromSI(pressureAtTemperature(shown, toSI(outsideF, 'F'), REFERENCE_K, SEA_LEVEL_PA), 'psi');
}

/** Time goes by: tires lose, tread wears, the battery fades. */
export function passTime(truth: Truth, days: number): void {
  for (const wheel of truth.wheels.values()) {
    wheel.pressurePsi -= (wheel.leakPsiPerWeek * days) / 7;
    wheel.treadThirtySeconds = Math.max(2.5, wheel.treadThirtySeconds - (0.35 * days) / YEAR_DAYS);
  }
  truth.batteryVolts += (truth.batteryFade * days) / YEAR_DAYS;
}

/**
 * Outside air of the demo's lake country in °F: a warm July, a hard January, and weather on top.
 * @param at epoch milliseconds
 */
export function outsideF(at: number, random: Random): number {
  const dayOfYear = ((at / DAY_MS) % YEAR_DAYS) + 1;
  const season = 38 - 34 * Math.cos((2 * Math.PI * (dayOfYear - 15)) / YEAR_DAYS);
  return Math.round(season + 9 * random.normal());
}
