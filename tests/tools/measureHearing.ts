/**
 * What the built-in ears make of spoken readings, as rates that the simulation of the believing policy takes:
 * `npx tsx tests/tools/measureHearing.ts [every]`. Tuning clips only; writes `tests/unit/language/earsRates.json`. Takes minutes.
 */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { confusionBetween } from '../../src/domain/language/confusions.ts';
import { CONDITIONS, hearConditions, meaningOf, type Outcome } from '../audio/conditions.ts';
import { requestOf } from '../audio/sentences.ts';

const GROUPS = {
  at10dB: ['wind 10 dB', 'gusts 10 dB', 'engine 10 dB'],
  at5dB: ['wind 5 dB', 'gusts 5 dB'],
} as const;
const QUANTILES = 20;
const RATES = 'tests/unit/language/earsRates.json';

/** From least to most, so many steps. */
function quantiles(values: readonly number[]): readonly number[] {
  const sorted = [...values].sort((a, b) => a - b);
  return Array.from({ length: QUANTILES + 1 }, (_, step) => {
    const at = (step / QUANTILES) * (sorted.length - 1);
    const below = Math.floor(at);
    const low = sorted[below] ?? 0;
    return Number((low + (at - below) * ((sorted[below + 1] ?? low) - low)).toFixed(3));
  });
}

const isReading = ({ clip, isAnswer }: Outcome) =>
  isAnswer && clip.check !== null && requestOf(clip.check).request.expects.kind === 'reading';

/** Whether the next hypothesis is one other value that sounds like the best one. */
function isTwinNext({ clip, others, heard }: Outcome): boolean {
  const single = (words: readonly string[]) => {
    const [kind, ...rest] = meaningOf(clip.check ?? '', words).split(' ');
    return kind === 'reading' && !rest.join(' ').includes(';') ? Number(rest.at(-2)) : Number.NaN;
  };
  const [best, next] = [single(heard), single(others[0] ?? [])];
  return Number.isFinite(best) && Number.isFinite(next) && confusionBetween(best, next) !== null;
}

async function main(): Promise<void> {
  const every = Number(process.argv[2] ?? 1);
  const rates: Record<string, unknown> = {};
  for (const [name, conditions] of Object.entries(GROUPS)) {
    const wanted = CONDITIONS.filter((condition) => (conditions as readonly string[]).includes(condition.name));
    const outcomes = (await hearConditions({ set: 'tuning', every, conditions: wanted, noiseAlone: false })).filter(isReading);
    const heard = outcomes.filter(({ meaning }) => meaning.startsWith('reading '));
    const right = heard.filter((one) => one.right);
    const wrong = heard.filter((one) => !one.right);
    const truthOf = ({ clip }: Outcome) => meaningOf(clip.check ?? '', clip.words);
    const behind = wrong.filter((one) => one.others.some((words) => meaningOf(one.clip.check ?? '', words) === truthOf(one)));
    const rivals = right.filter(isTwinNext);
    rates[name] = {
      readings: outcomes.length,
      heardAsReading: heard.length,
      wrong: Number((wrong.length / heard.length).toFixed(4)),
      truthBehind: Number((behind.length / Math.max(1, wrong.length)).toFixed(3)),
      rival: Number((rivals.length / right.length).toFixed(3)),
      confidenceRight: quantiles(right.map(({ confidence }) => confidence)),
      confidenceWrong: quantiles(wrong.map(({ confidence }) => confidence)),
      confidenceRival: quantiles(rivals.flatMap((one) => one.otherConfidences.slice(0, 1))),
    };
    console.log(name, JSON.stringify(rates[name]));
  }
  writeFileSync(RATES, `${JSON.stringify(rates, null, 2)}\n`);
  spawnSync('npx', ['biome', 'format', '--write', RATES]);
}

await main();
