/**
 * Which numbers are taken for which. Pairs as the built-in ears were measured to confuse them: teen and ty, five and nine,
 * fifty and sixty; beside them the pairs that wind and small speakers make alike (common practice, no source).
 */
import { teenTyTwin } from './speakNumber.ts';

export type ConfusionKind = 'teen-ty' | 'five-nine' | 'fifty-sixty' | 'one-nine' | 'lost-hundred' | 'lost-half' | 'lost-sign';

export interface Confusion {
  readonly value: number;
  readonly kind: ConfusionKind;
}

/** Digits that sound alike, both ways. */
const DIGIT_TWINS: Readonly<Record<number, readonly (readonly [number, ConfusionKind])[]>> = {
  5: [[9, 'five-nine']],
  9: [
    [5, 'five-nine'],
    [1, 'one-nine'],
  ],
  1: [[9, 'one-nine']],
};

const TENS_TWINS: Readonly<Record<number, readonly number[]>> = { 5: [6], 6: [5] };

/** Values that `value` may have been before it was misheard, each once. */
export function confusionsOf(value: number): readonly Confusion[] {
  const found: Confusion[] = [];
  const add = (other: number, kind: ConfusionKind) => {
    const tidy = Number(other.toPrecision(12));
    if (tidy !== value && !found.some((one) => one.value === tidy)) found.push({ value: tidy, kind });
  };
  const sign = value < 0 ? -1 : 1;
  const size = Math.abs(value);
  const whole = Math.floor(size);
  const part = Number((size - whole).toPrecision(6));
  const twin = teenTyTwin(whole);
  if (twin !== null) add(sign * (twin + part), 'teen-ty');
  const last = whole % 10;
  const isTeen = whole % 100 >= 10 && whole % 100 <= 19;
  if (!isTeen) for (const [digit, kind] of DIGIT_TWINS[last] ?? []) add(sign * (whole - last + digit + part), kind);
  const tens = Math.floor(whole / 10) % 10;
  for (const other of TENS_TWINS[tens] ?? []) add(sign * (whole + (other - tens) * 10 + part), 'fifty-sixty');
  if (part > 0) {
    const tenth = Math.round(part * 10);
    if (Math.abs(tenth - part * 10) < 1e-9)
      for (const [digit, kind] of DIGIT_TWINS[tenth] ?? []) add(sign * (whole + digit / 10), kind);
    if (part === 0.5) add(sign * whole, 'lost-half');
  }
  if (whole > 100 && whole < 200) add(sign * (whole - 100 + part), 'lost-hundred');
  if (value !== 0) add(-value, 'lost-sign');
  return found;
}

/** How two values are taken for one another; null where they are not alike. */
export function confusionBetween(a: number, b: number): ConfusionKind | null {
  const found =
    confusionsOf(a).find(({ value }) => Math.abs(value - b) < 1e-9) ??
    confusionsOf(b).find(({ value }) => Math.abs(value - a) < 1e-9);
  return found?.kind ?? null;
}
