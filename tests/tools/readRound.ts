/**
 * Prints a whole round as it is spoken, to be read as a person in the cold would hear it.
 * npx tsx tests/tools/readRound.ts [kestrel|lantern|heron] [before-towing|before-leaving-the-lake|stop-on-the-road] [--terse]
 */
import type { RoundKind } from '../../src/domain/checks/check.ts';
import { planRound } from '../../src/domain/plan/planRound.ts';
import { DEMO_UNITS } from '../../src/domain/unit/demo.ts';

const ROUNDS: readonly RoundKind[] = ['before-towing', 'before-leaving-the-lake', 'stop-on-the-road'];
const words = process.argv.slice(2);
const isTerse = words.includes('--terse');
const unit = DEMO_UNITS.find(({ name }) => words.includes(name.toLowerCase())) ?? DEMO_UNITS[2]!;
const round = ROUNDS.find((kind) => words.includes(kind)) ?? 'before-towing';
const plan = planRound(unit, round, Date.UTC(2026, 10, 25, 12));

console.log(
  `${unit.name}, ${round}: ${plan.checks.length} checks, ${plan.stations.length} stations, ${plan.walkM.toFixed(0)} m walked.`,
);
for (const sentence of plan.unknowns) console.log(`  (unknown) ${sentence}`);
for (const { name, answer } of plan.known ?? []) console.log(`  (known) ${name}: ${answer.kind === 'date' ? answer.value : ''}`);
for (const station of plan.stations) {
  console.log(`\n${station.name}   [${station.key}]`);
  for (const key of station.checks) {
    const check = plan.checks.find((candidate) => candidate.key === key)!;
    const { ask, askTerse, caution, hint } = check.lines;
    const expected = check.expects.kind === 'state' ? check.expects.ok[0] : check.expects.kind;
    if (isTerse) {
      console.log(`  ${askTerse}   → ${expected}`);
      continue;
    }
    if (caution !== null) console.log(`  ! ${caution}`);
    console.log(`  ${ask}`);
    console.log(`      ${hint}   [${key}, ${check.judge.worst}]`);
  }
}
