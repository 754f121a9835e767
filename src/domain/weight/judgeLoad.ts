/** A loaded unit against its label, its tongue band and the weakest part that pulls it. */
import type { Limit, Outcome } from '../checks/outcome.ts';
import { CERTIFICATION_LABEL, COMMON_PRACTICE } from '../judge/numbers/sources.ts';
import { WEIGHT } from '../judge/numbers/weight.ts';
import { formatAgainst, formatQuantity } from '../quantity/format.ts';
import type { LoadedUnit } from './load.ts';

export interface Ratings {
  readonly gvwrKg: number | null;
  /** Of one axle. */
  readonly gawrKg: number | null;
  readonly axles: number;
  /** All tires of the unit together. */
  readonly tiresKg: number | null;
  /** Gross trailer weight that each part is stamped for. */
  readonly couplerKg: number | null;
  readonly ballKg: number | null;
  readonly receiverKg: number | null;
  /** Breaking strength of one of two chains. */
  readonly chainKg: number | null;
  /** Highest tongue weight of hitch or tow vehicle. */
  readonly tongueKg: number | null;
}

export interface LoadLine {
  readonly id: string;
  readonly label: string;
  readonly outcome: Outcome;
  /** Formatted: "6,150 lb of 7,000 lb". */
  readonly text: string;
  readonly sentence: string;
  readonly limit: Limit | null;
  /** Load over rating; null where it is no rating or not known. */
  readonly share: number | null;
}

export interface LoadVerdict {
  readonly outcome: Outcome;
  /** Worst first within its kind; every rating that was asked about, known or not. */
  readonly lines: readonly LoadLine[];
  /** The rating used most; null where none is known. */
  readonly weakest: LoadLine | null;
  /** Figures that are missing, each as a sentence. */
  readonly missing: readonly string[];
}

const RANK: Readonly<Record<Outcome, number>> = { ok: 0, watch: 1, fix: 2, hold: 3 };
const ROUND_OFF = 1 + 1e-9;

/** Every rating in turn. Nothing is called good without its figure; what is missing is named. */
export function judgeLoad(loaded: LoadedUnit, ratings: Ratings, display: 'us' | 'metric'): LoadVerdict {
  const missing: string[] = [];
  const lines: LoadLine[] = [tongueLine(loaded, display)];
  const rate = (id: string, label: string, load: number, rating: number | null, ask: string) => {
    if (rating === null || !(rating > 0) || !Number.isFinite(rating)) {
      missing.push(ask);
      return;
    }
    lines.push(ratingLine(id, label, load, rating, display));
  };
  const { grossKg, axlesKg, tongueKg } = loaded;
  rate(
    'gvwr',
    'gross weight',
    grossKg,
    ratings.gvwrKg,
    'I do not know the gross weight rating. It is on the certification label.',
  );
  const axles = ratings.gawrKg === null ? null : ratings.gawrKg * ratings.axles;
  rate('gawr', 'weight on the axles', axlesKg, axles, 'I do not know the axle rating. It is on the certification label.');
  rate(
    'tires',
    'weight on the tires',
    axlesKg,
    ratings.tiresKg,
    'I do not know what the tires carry. It is molded in the sidewall.',
  );
  if (ratings.tiresKg !== null && axles !== null && axles > ratings.tiresKg * ROUND_OFF) {
    lines.push(tiresUnderAxle(ratings.tiresKg, axles, display));
  }
  rate('coupler', 'coupler', grossKg, ratings.couplerKg, 'I do not know the rating of the coupler. It is stamped on it.');
  rate('ball', 'ball', grossKg, ratings.ballKg, 'I do not know the rating of the ball. It is stamped on its top.');
  rate('receiver', 'receiver', grossKg, ratings.receiverKg, 'I do not know the rating of the receiver. It is on its label.');
  rate(
    'tongue-rating',
    'tongue weight on the hitch',
    tongueKg,
    ratings.tongueKg,
    'I do not know the tongue rating of the hitch.',
  );
  if (ratings.chainKg === null || !(ratings.chainKg > 0)) missing.push('I do not know the strength of the chains.');
  else lines.push(chainLine(grossKg, ratings.chainKg, display));
  const known = lines.filter(({ share }) => share !== null);
  const weakest = known.reduce<LoadLine | null>((most, line) => ((line.share ?? 0) > (most?.share ?? 0) ? line : most), null);
  const found = lines.reduce<Outcome>((worst, line) => (RANK[line.outcome] > RANK[worst] ? line.outcome : worst), 'ok');
  return { outcome: found === 'ok' && missing.length > 0 ? 'watch' : found, lines, weakest, missing };
}

function tongueLine({ grossKg, tongueKg, tongueShare }: LoadedUnit, display: 'us' | 'metric'): LoadLine {
  const low = WEIGHT.tongueLow;
  const high = WEIGHT.tongueHigh;
  const percent = (limit: typeof low) => formatAgainst(tongueShare, limit.si, 'percent', display);
  const base = { id: 'tongue', label: 'tongue weight', share: null } as const;
  const band = `${formatQuantity(grossKg * low.si, 'lb', display)} to ${formatQuantity(grossKg * high.si, 'lb', display)}`;
  const text = (shown: string) => `${formatQuantity(tongueKg, 'lb', display)}, ${shown} (wanted ${band})`;
  if (tongueShare < low.si / ROUND_OFF) {
    return {
      ...base,
      outcome: 'hold',
      text: text(percent(low)),
      sentence:
        tongueKg <= 0
          ? 'The tongue lifts the ball. Do not tow: move load ahead of the axle.'
          : 'The tongue is too light and the trailer will sway. Move load ahead of the axle.',
      limit: limitOf('tongue-low', 'tongue weight, least', 'at-least', low.si, 'hold', low.source),
    };
  }
  if (tongueShare > high.si * ROUND_OFF) {
    return {
      ...base,
      outcome: 'fix',
      text: text(percent(high)),
      sentence: 'The tongue is heavy. Move load back toward the axle.',
      limit: limitOf('tongue-high', 'tongue weight, most', 'at-most', high.si, 'fix', high.source),
    };
  }
  return { ...base, outcome: 'ok', text: text(percent(low)), sentence: 'The tongue weight is in its band.', limit: null };
}

/** Tires must carry what the axles are rated for; where they do not, they are the limit. Source: 49 CFR 571.110 S4.2. */
function tiresUnderAxle(tiresKg: number, axlesKg: number, display: 'us' | 'metric'): LoadLine {
  return {
    id: 'tires-axles',
    label: 'tires against axle rating',
    outcome: 'watch',
    text: `${formatAgainst(tiresKg, axlesKg, 'lb', display)} under ${formatQuantity(axlesKg, 'lb', display)}`,
    sentence: 'The tires carry less than the axles are rated for: the tires are the limit.',
    share: null,
    limit: limitOf('tires-axles', 'axle rating', 'at-least', axlesKg, 'watch', WEIGHT.tiresCarry.source, 'lb'),
  };
}

function ratingLine(id: string, label: string, load: number, rating: number, display: 'us' | 'metric'): LoadLine {
  const share = load / rating;
  const outcome: Outcome = share > ROUND_OFF ? 'hold' : share >= WEIGHT.near.si ? 'watch' : 'ok';
  const text = `${formatAgainst(load, rating, 'lb', display)} of ${formatQuantity(rating, 'lb', display)}`;
  const name = label.charAt(0).toUpperCase() + label.slice(1);
  const sentence = {
    hold: `${name}: more than its rating. Take load off before you tow.`,
    watch: `${name}: close to its rating. Put it on a scale.`,
    fix: '',
    ok: `${name}: within its rating.`,
  }[outcome];
  const source =
    id === 'gvwr' || id === 'gawr' ? CERTIFICATION_LABEL : { kind: 'maker' as const, text: `rating on the ${label}` };
  return { id, label, outcome, text, sentence, share, limit: limitOf(id, label, 'at-most', rating, 'hold', source, 'lb') };
}

/**
 * Two chains: together they must hold the gross weight; some states ask it of each.
 * Source: guidance to 49 CFR 393.70(d); New Hampshire RSA 266:63.
 */
export function chainLine(grossKg: number, chainKg: number, display: 'us' | 'metric'): LoadLine {
  const share = grossKg / (2 * chainKg);
  const text = `two of ${formatQuantity(chainKg, 'lb', display)} for ${formatQuantity(grossKg, 'lb', display)}`;
  const base = { id: 'chains', label: 'chains', text, share } as const;
  if (share > ROUND_OFF * WEIGHT.chainTotal.value) {
    return {
      ...base,
      outcome: 'hold',
      sentence: 'Both chains together are weaker than the trailer. Fit stronger ones before you tow.',
      limit: limitOf('chains', 'two chains together', 'at-least', grossKg, 'hold', WEIGHT.chainTotal.source, 'lb'),
    };
  }
  if (grossKg > chainKg * ROUND_OFF * WEIGHT.chainEach.value) {
    return {
      ...base,
      outcome: 'watch',
      sentence: 'Together the chains hold it; some states ask that each one does.',
      limit: limitOf('chain-each', 'each chain, in stricter states', 'at-least', grossKg, 'watch', WEIGHT.chainEach.source, 'lb'),
    };
  }
  return { ...base, outcome: 'ok', sentence: 'Each chain holds the whole trailer.', limit: null };
}

function limitOf(
  id: string,
  label: string,
  relation: Limit['relation'],
  si: number,
  outcome: Outcome,
  source: Limit['source'] = COMMON_PRACTICE,
  unit: Limit['unit'] = 'percent',
): Limit {
  return { id, label, relation, si, unit, outcome, source };
}
