/**
 * Seeded leaks and jumps: after how many weekly readings they are told, and how often something is told where nothing
 * changed. Run with `npx tsx tests/bench/trend.ts [repeats] [seed]`.
 */

import { crossing } from '../../src/domain/trend/crossing.ts';
import { linearRegression } from '../../src/domain/trend/linearRegression.ts';
import { median } from '../../src/domain/trend/median.ts';
import { normal, saidAfterEach, seeded, type TireStory, tireSeries } from '../unit/trend/simulate.ts';

const repeats = Number(process.argv[2] ?? 200);
const seed = Number(process.argv[3] ?? 20_261_125);
const random = seeded(seed);
const kinds = ['drift', 'shift', 'outlier'] as const;

console.log(
  `Seed ${seed}, ${repeats} tires each, one reading a week, gauge noise 0.6 psi, read to whole pounds, tire up to 3 °F off the air told.\n`,
);
console.log('nothing changes, 104 weeks:');
const alarms: Record<string, number> = { drift: 0, shift: 0, outlier: 0 };
for (let run = 0; run < repeats; run++) {
  const said = saidAfterEach(tireSeries({ weeks: 104 }, random));
  for (const [index, one] of said.entries()) {
    if (one && said[index - 1]?.kind !== one.kind) alarms[one.kind] = (alarms[one.kind] ?? 0) + 1;
  }
}
for (const kind of kinds)
  console.log(`  ${kind.padEnd(8)} ${((alarms[kind] ?? 0) / repeats / 2).toFixed(3)} false alarms a year and tire`);

const stories: readonly [string, TireStory][] = [
  ['leak 0.25 psi/week', { weeks: 60, from: 20, leak: 0.25 }],
  ['leak 0.5 psi/week', { weeks: 60, from: 20, leak: 0.5 }],
  ['leak 1 psi/week', { weeks: 40, from: 20, leak: 1 }],
  ['leak 1 psi/week, pumped up below 60', { weeks: 60, from: 20, leak: 1, refillBelow: 60 }],
  ['leak 2 psi/week', { weeks: 36, from: 20, leak: 2 }],
  ['leak 1 psi/week from the first reading', { weeks: 20, from: 0, leak: 1 }],
  ['jump of 3 psi', { weeks: 50, from: 20, jump: 3 }],
  ['jump of 5 psi', { weeks: 50, from: 20, jump: 5 }],
  ['jump of 10 psi', { weeks: 50, from: 20, jump: 10 }],
];
console.log('\nwhat changes                                told   delay: median   90 %  (weekly readings)   told first as');
for (const [name, story] of stories) {
  const delays: number[] = [];
  const first: Record<string, number> = {};
  for (let run = 0; run < repeats; run++) {
    const from = story.from ?? 0;
    const said = saidAfterEach(tireSeries(story, random));
    const index = said.findIndex((one, week) => week >= from && one !== null);
    if (index < 0) continue;
    delays.push(index - from + 1);
    const kind = said[index]?.kind ?? 'none';
    first[kind] = (first[kind] ?? 0) + 1;
  }
  delays.sort((a, b) => a - b);
  const share = `${Math.round((100 * delays.length) / repeats)} %`.padStart(6);
  const middle = delays.length > 0 ? median(delays).toFixed(1).padStart(8) : '       -';
  const ninety = String(delays[Math.floor(0.9 * delays.length)] ?? '-').padStart(10);
  console.log(`${name.padEnd(40)} ${share}        ${middle} ${ninety}                 ${JSON.stringify(first)}`);
}

let inside = 0;
let told = 0;
for (let run = 0; run < repeats * 10; run++) {
  const points = Array.from({ length: 12 }, (_, t) => ({ t: 7 * t, x: 65 - t * 0.7 + 0.8 * normal(random) }));
  const fit = linearRegression([points]);
  const found = fit && crossing(fit, 50, 0.95);
  if (!found) continue;
  told++;
  if (found.earliest <= 150 && 150 <= found.latest) inside++;
}
console.log(
  `\nforecast interval: the true day lies inside in ${((100 * inside) / told).toFixed(1)} % of ${told} (nominal 95 %).`,
);

console.log('\nrate told for a leak that began in week 20, after so many weeks of it (true rate 1 psi/week):');
for (const weeks of [6, 8, 12, 20]) {
  const rates: number[] = [];
  const days: number[] = [];
  for (let run = 0; run < repeats; run++) {
    const last = saidAfterEach(tireSeries({ weeks: 20 + weeks, from: 20, leak: 1, indoors: true }, random)).at(-1);
    if (last?.slopePerDay) rates.push(-7 * last.slopePerDay);
    if (last?.forecast) days.push((last.forecast.at - last.at) / 86_400_000);
  }
  const due = (15 - weeks) * 7;
  const forecast =
    days.length > 0
      ? `, reaches 50 in ${median(days).toFixed(0)} days (true: ${due}), told for ${days.length} of ${repeats}`
      : ', no day told';
  console.log(`  ${String(weeks).padStart(2)} weeks: ${rates.length > 0 ? median(rates).toFixed(2) : '-'} psi/week${forecast}`);
}
