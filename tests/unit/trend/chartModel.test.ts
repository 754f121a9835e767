import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chartModel, niceRange } from '../../../src/domain/trend/chartModel.ts';
import { describeTrend } from '../../../src/domain/trend/describeTrend.ts';
import { seeded, tireSeries } from './simulate.ts';

describe('chartModel', () => {
  const series = tireSeries({ weeks: 30, leak: 0.5, indoors: true }, seeded(4));
  const statement = describeTrend(series, series.limits, series.readings.at(-1)?.at ?? 0, 'us');

  it('holds every reading, limit and the band to the end of the forecast, all inside its range', () => {
    const model = chartModel(series, statement, 'us');
    expect(model?.points).toHaveLength(30);
    expect(model?.limits.map(({ value }) => Math.round(value))).toEqual([50]);
    for (const point of model?.points ?? []) {
      expect(point.value).toBeGreaterThanOrEqual(model?.low ?? Number.NaN);
      expect(point.value).toBeLessThanOrEqual(model?.high ?? Number.NaN);
    }
    for (const one of model?.line ?? []) {
      expect(one.low).toBeLessThanOrEqual(one.value + 1e-9);
      expect(one.high).toBeGreaterThanOrEqual(one.value - 1e-9);
    }
    expect(model?.line?.length).toBeGreaterThanOrEqual(3);
  });

  it('shows what came before a cut pale, and where the cut is', () => {
    const cut = {
      ...series,
      readings: series.readings.slice(10),
      earlier: [{ readings: series.readings.slice(0, 10), endedBy: 'tire changed' }],
    };
    const model = chartModel(cut, null, 'us');
    expect(model?.points.filter((point) => point.earlier)).toHaveLength(10);
    expect(model?.cuts.map(({ why }) => why)).toEqual(['tire changed']);
  });

  it('is in kilopascals where metric is chosen, and nothing without readings', () => {
    expect(chartModel(series, null, 'metric')?.points[0]?.value).toBeGreaterThan(400);
    expect(chartModel({ ...series, readings: [] }, null, 'us')).toBeNull();
  });
});

describe('niceRange', () => {
  it('counts in whole numbers and never below nought', () => {
    expect(niceRange(0, 2, 1)).toEqual({ low: 0, high: 3, ticks: [0, 1, 2, 3] });
    expect(niceRange(0, 0, 1).ticks).toEqual([0, 1]);
  });

  it('holds every value between three and eight round ticks', () => {
    const value = fc.double({ min: -1e4, max: 1e4, noNaN: true });
    fc.assert(
      fc.property(value, value, (a, b) => {
        const [least, most] = [Math.min(a, b), Math.max(a, b)];
        fc.pre(most === least || most - least > 1e-3);
        const { low, high, ticks } = niceRange(least, most, 0);
        expect(low).toBeLessThanOrEqual(least);
        expect(high).toBeGreaterThanOrEqual(most);
        expect(ticks.length).toBeGreaterThanOrEqual(2);
        expect(ticks.length).toBeLessThanOrEqual(8);
      }),
    );
  });
});
