/**
 * `npm test`: types, lint, unit, published, machines, then the production build, the browser tests and the tests on real audio.
 * The last need Debian's speech packages. Where they are not installed that stage says so and what is missing; with
 * SPEECH=required, as `.ci/run` sets it, that is a failure.
 * Every stage runs even when an earlier one fails, so that one run tells everything; the exit code is 1 when any failed.
 * The last line counts tests: "N passed, N failed".
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { missingTools } from '../audio/voices.ts';
import { findChromium } from './chromium.ts';

interface Report {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly numPendingTests: number;
  readonly success: boolean;
}

const OUT = 'tests/.out';
rmSync(OUT, { recursive: true, force: true });
mkdirSync(OUT, { recursive: true });

let passed = 0;
let failed = 0;
const failures: string[] = [];

const run = (label: string, command: string, args: readonly string[]): boolean => {
  const started = Date.now();
  console.log(`\n── ${label}`);
  const { status } = spawnSync(command, [...args], {
    stdio: 'inherit',
    shell: process.platform === 'win32',
    env: { ...process.env, NO_COLOR: '1' },
  });
  const good = status === 0;
  console.log(`── ${label}: ${good ? 'good' : 'FAILED'} in ${((Date.now() - started) / 1000).toFixed(1)} s`);
  if (!good) failures.push(label);
  return good;
};

/** A stage without tests of its own counts as one. */
const stage = (label: string, command: string, args: readonly string[]) => {
  if (run(label, command, args)) passed += 1;
  else failed += 1;
};

const vitest = (label: string, args: readonly string[]) => {
  const file = `${OUT}/${label}.json`;
  const good = run(label, 'npx', [
    'vitest',
    'run',
    ...args,
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${file}`,
  ]);
  if (!existsSync(file)) {
    failed += 1;
    return;
  }
  const report = JSON.parse(readFileSync(file, 'utf8')) as Report;
  passed += report.numPassedTests;
  failed += report.numFailedTests;
  if (report.numPendingTests > 0) {
    console.log(`── ${label}: ${report.numPendingTests} tests did not run`);
    failures.push(`${label} (tests that did not run)`);
  }
  if (!good && report.numFailedTests === 0) failed += 1;
};

stage('types', 'npx', ['tsc', '-b']);
stage('lint', 'npx', ['biome', 'check', '.']);
stage('walls', 'npx', ['tsx', 'tests/tools/walls.ts']);
vitest('unit', ['tests/unit']);
vitest('published', ['tests/published']);
vitest('machines', ['tests/machines']);
stage('build', 'npx', ['vite', 'build', '--logLevel', 'warn']);
if (findChromium() === null) {
  console.error(
    'No Chrome or Chromium was found. Install one (on Debian: apt-get install chromium) or set CHROMIUM to its path.',
  );
  failed += 1;
  failures.push('browser (no Chromium)');
} else {
  vitest('browser', ['--config', 'tests/e2e/vitest.config.ts']);
}
const missing = [...missingTools(), ...(findChromium() === null ? ['chromium'] : [])];
if (missing.length === 0) {
  vitest('speech', ['--config', 'tests/audio/vitest.config.ts']);
} else {
  console.log(`\n── speech: NOT RUN, not installed here: ${missing.join(', ')}`);
  if (process.env.SPEECH === 'required') {
    failed += 1;
    failures.push('speech (not installed)');
  }
}

if (failures.length > 0) console.log(`\nFailed: ${failures.join(', ')}`);
console.log(`\n${passed} passed, ${failed} failed`);
process.exit(failures.length === 0 && failed === 0 ? 0 : 1);
