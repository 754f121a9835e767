/** A heater test in sentences: how fast, how far, whether it holds tonight, and how it used to be. */
import { HEAT } from '../judge/numbers/heat.ts';
import { formatQuantity, speakQuantity } from '../quantity/format.ts';
import { compareTests, fitWarmUp, type InsideReading, tonight, warmingRate } from './warmUp.ts';

export interface HeaterTest {
  /** Two or more, times rising. */
  readonly readings: readonly InsideReading[];
  /** Outside air during the test, K; null: not known. */
  readonly outsideK: number | null;
  /** Tonight's forecast, K; null: not known. */
  readonly tonightK: number | null;
  /** Rises of this unit's earlier tests over the same minutes, K. */
  readonly earlierK: readonly number[];
  readonly display: 'us' | 'metric';
}

export interface HeaterReport {
  /** For the ear, one thing each. */
  readonly sentences: readonly string[];
  /** For the page: label and value. */
  readonly facts: readonly { readonly label: string; readonly text: string }[];
  /** Whether it holds tonight; null where that can not be told. */
  readonly holds: 'yes' | 'maybe' | 'no' | null;
}

const isAir = (kelvin: number | null): kelvin is number => kelvin !== null && kelvin > 180 && kelvin < 335;

/** What a test says. Never a number where the readings do not carry one: then a sentence that says what to do. */
export function heaterReport({ readings, outsideK, tonightK, earlierK, display }: HeaterTest): HeaterReport {
  const rate = warmingRate(readings);
  const [first, last] = [readings[0], readings.at(-1)];
  if (rate === null || !first || !last) {
    return { sentences: ['Read the inside temperature when it is lit, and again ten minutes later.'], facts: [], holds: null };
  }
  const sentences: string[] = [];
  const facts = [{ label: 'rise in an hour', text: formatQuantity(rate * 3600, 'F-diff', display) }];
  const comparison = compareTests(last.temperatureK - first.temperatureK, earlierK);
  if (comparison) {
    sentences.push(comparison.sentence);
    facts.push({ label: 'usual rise', text: formatQuantity(comparison.usualK, 'F-diff', display) });
  }
  if (readings.length < 3) return { sentences, facts, holds: null };
  const fit = fitWarmUp(readings);
  if (!fit.ok) return { sentences: [...sentences, fit.sentence], facts, holds: null };
  const high = Number.isFinite(fit.endHighK) ? formatQuantity(fit.endHighK, 'F', display) : 'much more';
  facts.push(
    { label: 'ends at about', text: formatQuantity(fit.endK, 'F', display) },
    { label: 'or anything from', text: `${formatQuantity(fit.endLowK, 'F', display)} to ${high}` },
    { label: 'time constant', text: `${Math.round(fit.tauS / 60)} minutes` },
  );
  if (!isAir(outsideK) || !isAir(tonightK)) return { sentences, facts, holds: null };
  const likely = tonight(fit.endK, outsideK, tonightK);
  const least = tonight(fit.endLowK, outsideK, tonightK);
  if (!likely || !least) return { sentences, facts, holds: null };
  const wanted = speakQuantity(HEAT.wanted.si, 'F', display);
  facts.push({ label: 'burning tonight, part of the time', text: formatQuantity(Math.min(likely.duty, 1), 'percent', display) });
  sentences.push(
    least.holds
      ? `At tonight's ${speakQuantity(tonightK, 'F', display)} it holds ${wanted}.`
      : likely.holds
        ? `At tonight's ${speakQuantity(tonightK, 'F', display)} it may just hold ${wanted}.`
        : `At tonight's ${speakQuantity(tonightK, 'F', display)} it will not hold ${wanted}: about ${speakQuantity(likely.endK, 'F', display)} is the most.`,
  );
  return { sentences, facts, holds: least.holds ? 'yes' : likely.holds ? 'maybe' : 'no' };
}
