import type { Position } from '../checks/expects.ts';
import type { Limit } from '../checks/outcome.ts';

export type TrendKind = 'drift' | 'shift' | 'outlier' | 'divergence' | 'lugs' | 'furnace';

/** When a limit is reached, epoch milliseconds, with a 95 % interval. */
export interface ForecastTime {
  readonly at: number;
  readonly earliest: number;
  readonly latest: number;
  readonly limit: Limit;
}

/** The straight line behind a drift, for the chart. */
export interface TrendLine {
  /** Epoch milliseconds of its ends, and values in the series' unit there. */
  readonly from: number;
  readonly to: number;
  readonly atFrom: number;
  readonly atTo: number;
  /** Slope bounds in the series' unit a day. */
  readonly slopeLower: number;
  readonly slopeUpper: number;
}

/** One thing that looking back shows about one check. */
export interface TrendStatement {
  readonly kind: TrendKind;
  readonly unitId: string;
  /** Key of the check within a plan. */
  readonly key: string;
  readonly check: string;
  readonly position: Position | null;
  readonly name: string;
  /** One plain sentence for the ear and the screen. */
  readonly text: string;
  /** Heads for a limit, is beyond it, or wants something done. */
  readonly concern: boolean;
  /** Of the newest reading behind it, epoch milliseconds. */
  readonly at: number;
  readonly count: number;
  readonly slopePerDay: number | null;
  readonly p: number | null;
  readonly forecast: ForecastTime | null;
  readonly line: TrendLine | null;
  /** How it was worked out, in short facts. */
  readonly because: readonly string[];
  readonly demo: boolean;
}
