/** The page can not drift from the code: what is listed is what is computed with. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { AIR } from '../../../src/domain/judge/numbers/air.ts';
import { ALARM_TABLES, ALARMS } from '../../../src/domain/judge/numbers/alarms.ts';
import { BATTERY, BATTERY_TABLES } from '../../../src/domain/judge/numbers/battery.ts';
import { COLD, COLD_TABLES, ICE } from '../../../src/domain/judge/numbers/cold.ts';
import { HEAT, HEAT_TABLES } from '../../../src/domain/judge/numbers/heat.ts';
import { LIFT, LIFT_TABLES } from '../../../src/domain/judge/numbers/lift.ts';
import { LUG_TABLES, LUGS } from '../../../src/domain/judge/numbers/lugs.ts';
import { TIRE_TABLES, TIRES } from '../../../src/domain/judge/numbers/tires.ts';
import { WEIGHT } from '../../../src/domain/judge/numbers/weight.ts';
import { NUMBER_TOPICS } from '../../../src/domain/judge/numbers.ts';
import { planRound } from '../../../src/domain/plan/planRound.ts';
import { toSI } from '../../../src/domain/quantity/units.ts';
import { DEMO_UNITS } from '../../../src/domain/unit/demo.ts';
import { NOW } from './given.ts';

const DOMAIN = join(import.meta.dirname, '../../../src/domain');
const code = readdirSync(DOMAIN, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.ts') && !path.includes(join('judge', 'numbers', '/')))
  .map((path) => readFileSync(join(DOMAIN, path), 'utf8'))
  .join('\n');
const entries = NUMBER_TOPICS.flatMap((topic) => topic.entries);
const GROUPS = { TIRES, LUGS, LIFT, WEIGHT, HEAT, ALARMS, BATTERY, COLD, ICE, AIR };
const TABLES = [TIRE_TABLES, LUG_TABLES, LIFT_TABLES, HEAT_TABLES, ALARM_TABLES, BATTERY_TABLES, COLD_TABLES];

describe('the list of numbers', () => {
  it('holds every figure and table there is, each once', () => {
    const all = [...Object.values(GROUPS), ...TABLES].flatMap((group) => Object.values(group).map(({ id }) => id));
    const listed = entries.map(({ id }) => id);
    expect([...listed].sort()).toEqual([...all].sort());
    expect(new Set(listed).size).toBe(listed.length);
  });

  it.each(Object.entries(GROUPS).flatMap(([group, figures]) => Object.keys(figures).map((name) => `${group}.${name}`)))(
    '%s is what the code computes with',
    (name) => {
      const [group = '', own = ''] = name.split('.');
      const isUsed = code.includes(name) || new RegExp(`\\b${own}\\b[^;]*\\} = ${group};`).test(code);
      // Shown for comparison only, and says so.
      const isShown = entries.some(({ id, usedFor }) => id.endsWith(kebab(own)) && usedFor === 'shown only');
      expect(isUsed || isShown).toBe(true);
    },
  );

  it('gives each a label, a use and a source, and keeps its SI value', () => {
    for (const entry of entries) {
      expect(entry.label.length, entry.id).toBeGreaterThan(1);
      expect(entry.usedFor.length, entry.id).toBeGreaterThan(2);
      expect(entry.source.text.length, entry.id).toBeGreaterThan(3);
      if (entry.kind === 'figure') {
        expect(Number.isFinite(entry.si), entry.id).toBe(true);
        if (entry.unit !== null) expect(entry.si, entry.id).toBe(toSI(entry.value, entry.unit));
      } else {
        for (const row of entry.rows) expect(row, entry.id).toHaveLength(entry.columns.length);
      }
    }
  });

  it('says common practice where there is no source, and never both', () => {
    for (const { source, id } of entries) {
      if (source.kind === 'common-practice')
        expect([source.text, source.fromMemory], id).toEqual(['common practice, no source', undefined]);
    }
  });
});

describe('limits frozen into plans', () => {
  const plans = DEMO_UNITS.flatMap((unit) =>
    (['before-towing', 'before-leaving-the-lake', 'stop-on-the-road'] as const).map((round) => planRound(unit, round, NOW)),
  );

  it('each has a finite figure, a label and a source, and is plain data', () => {
    for (const plan of plans) {
      for (const { judge, key } of plan.checks) {
        for (const limit of judge.limits) {
          expect(Number.isFinite(limit.si), `${key} ${limit.id}`).toBe(true);
          expect(limit.label.length * limit.source.text.length, `${key} ${limit.id}`).toBeGreaterThan(0);
        }
        expect(JSON.parse(JSON.stringify(judge))).toEqual(judge);
        expect(new Set(judge.limits.map(({ id }) => id)).size).toBe(judge.limits.length);
      }
    }
  });
});

function kebab(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}
