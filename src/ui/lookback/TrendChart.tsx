/**
 * One series as a small chart, with its table beside it. The chart is a picture for the eye; everything in it is also in
 * its description, in the slider that steps through the readings, and in the table.
 */
import { memo, useId, useMemo, useState } from 'react';
import type { Series } from '../../domain/history/series.ts';
import { type ChartModel, type ChartPoint, chartModel } from '../../domain/trend/chartModel.ts';
import type { TrendStatement } from '../../domain/trend/statement.ts';
import { plainNumber } from '../../domain/trend/wording.ts';
import type { Display } from '../../domain/voice/settings.ts';
import { outcomeWord } from '../parts/OutcomeMark.tsx';
import { withUnit } from '../parts/shownUnit.ts';
import { dayText } from './dates.ts';
import { ReadingTable } from './ReadingTable.tsx';

const WIDTH = 340;
const HEIGHT = 190;
const LEFT = 44;
const RIGHT = 10;
const TOP = 12;
const BOTTOM = 26;

export interface TrendChartProps {
  readonly series: Series;
  readonly statement: TrendStatement | null;
  readonly display: Display;
  readonly title: string;
  readonly roundHref: (round: string) => string;
}

export const TrendChart = memo(({ series, statement, display, title, roundHref }: TrendChartProps) => {
  const id = useId();
  const model = useMemo(() => chartModel(series, statement, display), [series, statement, display]);
  const [picked, setPicked] = useState<number | null>(null);
  if (!model) return null;
  const chosen = picked === null ? null : (model.points[picked] ?? null);
  const step = model.unit === series.unit ? series.step : 0.1;
  const say = (value: number) => withUnit(plainNumber(value, step), model.unit);
  return (
    <figure className="look-chart">
      <figcaption>
        <span className="look-chart-title">{title}</span>
        {statement && <span className="look-chart-says">{statement.text}</span>}
      </figcaption>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-labelledby={`${id}-title ${id}-desc`}>
        <title id={`${id}-title`}>{title}</title>
        <desc id={`${id}-desc`}>{descriptionOf(model, say)}</desc>
        <Grid model={model} say={say} />
        <Band model={model} />
        <Points model={model} />
        {chosen && (
          <path className={`${lookOf(chosen)} picked`} d={markPath(chosen, xOf(model, chosen.at), yOf(model, chosen.value), 7)} />
        )}
      </svg>
      <label className="look-step screen-only">
        Step through the readings
        <input
          type="range"
          min={0}
          max={model.points.length - 1}
          value={picked ?? model.points.length - 1}
          aria-valuetext={readingText(model.points[picked ?? model.points.length - 1], say)}
          onChange={(event) => setPicked(Number(event.currentTarget.value))}
        />
      </label>
      <p className="look-picked screen-only">
        {chosen ? (
          <>
            {readingText(chosen, say)} <a href={roundHref(chosen.round)}>Open the round</a>
          </>
        ) : (
          readingText(model.points.at(-1), say)
        )}
      </p>
      <ReadingTable series={series} display={display} title={title} roundHref={roundHref} />
      {model.note && <p className="look-note">{model.note}</p>}
      {statement && (
        <details className="look-because">
          <summary>How this was worked out</summary>
          <ul>
            {statement.because.map((fact) => (
              <li key={fact}>{fact}</li>
            ))}
          </ul>
        </details>
      )}
    </figure>
  );
});

function xOf({ from, to }: ChartModel, at: number): number {
  return LEFT + ((at - from) / (to - from)) * (WIDTH - LEFT - RIGHT);
}

function yOf({ low, high }: ChartModel, value: number): number {
  return TOP + ((high - value) / (high - low)) * (HEIGHT - TOP - BOTTOM);
}

function readingText(point: ChartPoint | undefined, say: (value: number) => string): string {
  return point ? `${dayText(point.at)}: ${say(point.read)}, ${outcomeWord(point.outcome)}` : '';
}

function descriptionOf(model: ChartModel, say: (value: number) => string): string {
  const [first, last] = [model.points[0], model.points.at(-1)];
  if (!first || !last) return '';
  const limits = model.limits.map(({ value, limit }) => `${limit.label} ${say(value)}`).join(', ');
  const cuts = model.cuts.map(({ at, why }) => `${why} after ${dayText(at)}`).join(', ');
  return [
    `${model.points.length} readings from ${dayText(first.at)} to ${dayText(last.at)}, the first ${say(first.value)}, the last ${say(last.value)}.`,
    limits === '' ? 'No limits known.' : `Limits: ${limits}.`,
    cuts === '' ? '' : `Cut: ${cuts}.`,
  ]
    .filter((part) => part !== '')
    .join(' ');
}

function Grid({ model, say }: { readonly model: ChartModel; readonly say: (value: number) => string }) {
  const right = WIDTH - RIGHT;
  const base = HEIGHT - BOTTOM;
  return (
    <g className="look-grid">
      {model.ticks.map((tick) => (
        <g key={tick}>
          <line x1={LEFT} x2={right} y1={yOf(model, tick)} y2={yOf(model, tick)} />
          <text x={LEFT - 5} y={yOf(model, tick) + 4} textAnchor="end">
            {Number(tick.toPrecision(6))}
          </text>
        </g>
      ))}
      {model.limits.map(({ value, limit }) => (
        <g key={limit.id} className="look-limit">
          <line x1={LEFT} x2={right} y1={yOf(model, value)} y2={yOf(model, value)} />
          <text x={right} y={yOf(model, value) - 4} textAnchor="end">
            {limit.label} {say(value)}
          </text>
        </g>
      ))}
      {model.cuts.map(({ at, why }) => (
        <g key={at} className="look-cut">
          <line x1={xOf(model, at) + 3} x2={xOf(model, at) + 3} y1={TOP} y2={base}>
            <title>{why}</title>
          </line>
        </g>
      ))}
      <path
        className="look-round-ticks"
        d={model.points.map((point) => `M${xOf(model, point.at).toFixed(1)} ${base}v5`).join('')}
      />
      <text x={LEFT} y={HEIGHT - 6}>
        {dayText(model.from)}
      </text>
      <text x={right} y={HEIGHT - 6} textAnchor="end">
        {dayText(model.to)}
      </text>
    </g>
  );
}

/** The uncertainty of the slope as a band, the line itself dashed beyond the last reading. */
function Band({ model }: { readonly model: ChartModel }) {
  const { line } = model;
  const last = model.points.at(-1)?.at ?? 0;
  if (!line) return null;
  const at = (value: number) => Math.min(Math.max(value, model.low), model.high);
  const path = (values: readonly { readonly at: number; readonly value: number }[]) =>
    values.map((one) => `${xOf(model, one.at).toFixed(1)},${yOf(model, at(one.value)).toFixed(1)}`).join(' ');
  const top = line.map((one) => ({ at: one.at, value: one.high }));
  const bottom = line.map((one) => ({ at: one.at, value: one.low })).reverse();
  return (
    <g className="look-trend">
      <polygon className="look-band" points={path([...top, ...bottom])} />
      <polyline points={path(line.filter((one) => one.at <= last))} />
      <polyline className="look-ahead" points={path(line.filter((one) => one.at >= last))} />
    </g>
  );
}

/** Drawn anew only for other readings: stepping through them moves one mark among a hundred. */
const Points = memo(({ model }: { readonly model: ChartModel }) =>
  model.points.map((point) => (
    <path key={point.entry} className={lookOf(point)} d={markPath(point, xOf(model, point.at), yOf(model, point.value), 4.5)} />
  )),
);

function lookOf({ outcome, earlier }: ChartPoint): string {
  return `look-point ${outcome}${earlier ? ' earlier' : ''}`;
}

/** One shape for each outcome, so that no color is needed: circle, triangle, diamond, square. */
function markPath({ outcome }: ChartPoint, x: number, y: number, size: number): string {
  const round = (value: number) => value.toFixed(1);
  const from = (left: number, top: number) => `M${round(left)} ${round(top)}`;
  const wide = 2 * size;
  const slant = round(size * 1.3);
  switch (outcome) {
    case 'ok':
      return `${from(x - size, y)}a${size} ${size} 0 1 0 ${wide} 0a${size} ${size} 0 1 0 ${-wide} 0z`;
    case 'watch':
      return `${from(x, y - size)}l${size} ${wide}h${-wide}z`;
    case 'fix':
      return `${from(x, y - size * 1.3)}l${slant} ${slant}l-${slant} ${slant}l-${slant} -${slant}z`;
    case 'hold':
      return `${from(x - size, y - size)}h${wide}v${wide}h${-wide}z`;
  }
}
