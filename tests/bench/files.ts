/**
 * Twelve years of use: three units, about a thousand rounds, sixty thousand readings. Times of looking back, of saving and
 * of reading back, and memory. Run with `npx tsx --expose-gc tests/bench/files.ts`.
 */
import { generateHistory } from '../../src/domain/demo/generate.ts';
import { readingsCsv } from '../../src/domain/files/csv.ts';
import type { Dataset } from '../../src/domain/files/dataset.ts';
import { exportAll } from '../../src/domain/files/exportAll.ts';
import { merge } from '../../src/domain/files/merge.ts';
import { parseExport } from '../../src/domain/files/parseExport.ts';
import { remindersFor } from '../../src/domain/files/reminders.ts';
import { openFindings } from '../../src/domain/history/findings.ts';
import { trendsFor } from '../../src/domain/trend/trendsFor.ts';
import { createUnit } from '../../src/domain/unit/createUnit.ts';
import { TEMPLATES } from '../../src/domain/unit/templates.ts';

const AT = Date.UTC(2026, 1, 20);
const gc = (globalThis as { gc?: () => void }).gc;
const heapMB = () => {
  gc?.();
  return process.memoryUsage().heapUsed / 1e6;
};

function timed<T>(name: string, work: () => T, runs = 1): T {
  const times: number[] = [];
  const cpu: number[] = [];
  let result = work();
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    const used = process.cpuUsage();
    result = work();
    times.push(performance.now() - start);
    cpu.push(process.cpuUsage(used).user / 1000);
  }
  times.sort((a, b) => a - b);
  cpu.sort((a, b) => a - b);
  console.log(
    `${name.padEnd(46)} ${(times[times.length >> 1] ?? 0).toFixed(1).padStart(8)} ms, ${(cpu[cpu.length >> 1] ?? 0).toFixed(1)} ms of the processor`,
  );
  return result;
}

const before = heapMB();
const units = TEMPLATES.slice(0, 3).map((template, index) => ({
  ...createUnit(template, { id: `demo-${index}`, name: `Demo ${index}`, at: 0 }),
  demo: true,
}));
const start = performance.now();
const history = generateHistory({ units, years: 12, seed: 12, at: AT });
console.log(`generated in ${(performance.now() - start).toFixed(0)} ms`);
const { rounds, events } = history;
const entries = rounds.flatMap((record) => record.entries);
const answers = entries.filter((entry) => entry.kind === 'answered');
const readings = answers.filter((entry) => entry.answer.kind === 'reading' || entry.answer.kind === 'count').length;
console.log(
  `${rounds.length} rounds, ${entries.length} entries, ${answers.length} answers (${readings} numeric), heap ${(heapMB() - before).toFixed(0)} MB\n`,
);

const trends = timed('all trends of three units', () => trendsFor(history, AT, 'us'), 9);
const one = { rounds: rounds.filter(({ round }) => round.unit === 'demo-0'), events };
timed('trends of one unit', () => trendsFor(one, AT, 'us'), 9);
timed('open findings of one unit', () => openFindings(one), 9);
timed(
  'reminders of one unit',
  () =>
    remindersFor(
      units[0] ??
        (() => {
          throw new Error('no unit');
        })(),
      one,
      trends.statements,
    ),
  9,
);
console.log(`${trends.series.length} series, ${trends.statements.length} statements\n`);

const data: Dataset = { schema: 1, units, rounds: rounds.map(({ round }) => round), entries, events, deleted: [] };
const text = timed('export', () => exportAll(data), 2);
console.log(
  `   ${(text.length / 1e6).toFixed(1)} million characters (plans written out: ${(JSON.stringify(data).length / 1e6).toFixed(1)})`,
);
const parsed = timed('import (parse and check)', () => parseExport(text), 2);
if (!parsed.ok) throw new Error(parsed.sentence);
console.log(`   round trip identical: ${exportAll(parsed.data) === text}`);
timed('merge with itself', () => merge(data, parsed.data), 2);
timed('CSV of all readings', () => readingsCsv({ series: trends.series, unitNames: new Map(), display: 'us' }), 2);
console.log(`heap at the end ${heapMB().toFixed(0)} MB`);
