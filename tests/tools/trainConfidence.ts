/**
 * Trains the confidence on the tuning clips and writes `src/speech/recogniser/confidenceWeights.ts`:
 * `npx tsx tests/tools/trainConfidence.ts [every]`. Takes a quarter of an hour with every second clip. What must not be accepted: wrong
 * answers, other people's talk, answers to other checks, noise alone. Prints what the thresholds give on the same clips; the figures to
 * quote come from `tests/bench/ears.ts`, on other clips.
 */
import { writeFileSync } from 'node:fs';
import { confidenceOf, inputsOf } from '../../src/speech/recogniser/confidence.ts';
import type { Evidence } from '../../src/speech/recogniser/evidence.ts';
import { CONDITIONS, hearConditions, type Outcome } from '../audio/conditions.ts';

/** A wrong value that is accepted does more harm than a right one that is asked again. */
const WEIGHT_OF_WRONG = 3;
const RIDGE = 0.02;

interface Sample {
  readonly inputs: readonly number[];
  readonly right: boolean;
}

/** Logistic regression by Newton's method with a small ridge. */
function train(samples: readonly Sample[]): number[] {
  const size = samples[0]?.inputs.length ?? 0;
  const weights = new Array<number>(size).fill(0);
  for (let round = 0; round < 30; round += 1) {
    const gradient = weights.map((weight, index) => (index === 0 ? 0 : -RIDGE * weight * samples.length * 0.01));
    const hessian = weights.map((_, row) =>
      weights.map((__, column) => (row === column ? RIDGE * samples.length * 0.01 + 1e-6 : 0)),
    );
    for (const { inputs, right } of samples) {
      const importance = right ? 1 : WEIGHT_OF_WRONG;
      const sum = inputs.reduce((total, input, index) => total + input * weights[index]!, 0);
      const probability = 1 / (1 + Math.exp(-sum));
      const error = (right ? 1 : 0) - probability;
      for (let row = 0; row < size; row += 1) {
        gradient[row]! += importance * error * inputs[row]!;
        for (let column = 0; column < size; column += 1)
          hessian[row]![column]! += importance * probability * (1 - probability) * inputs[row]! * inputs[column]!;
      }
    }
    const step = solve(hessian, gradient);
    for (const [index, change] of step.entries()) weights[index]! += change;
    if (Math.max(...step.map(Math.abs)) < 1e-6) break;
  }
  return weights;
}

/** Gaussian elimination with pivoting. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, index) => [...row, right[index]!]);
  const size = rows.length;
  for (let column = 0; column < size; column += 1) {
    let pivot = column;
    for (let row = column; row < size; row += 1) if (Math.abs(rows[row]![column]!) > Math.abs(rows[pivot]![column]!)) pivot = row;
    [rows[column], rows[pivot]] = [rows[pivot]!, rows[column]!];
    for (let row = 0; row < size; row += 1) {
      if (row === column) continue;
      const factor = rows[row]![column]! / rows[column]![column]!;
      for (let k = column; k <= size; k += 1) rows[row]![k]! -= factor * rows[column]![k]!;
    }
  }
  return rows.map((row, index) => row[size]! / row[index]!);
}

const share = (part: number, whole: number) => `${((100 * part) / Math.max(1, whole)).toFixed(1)} %`;

async function main(): Promise<void> {
  const every = Number(process.argv[2] ?? 2);
  const outcomes: Outcome[] = await hearConditions({ set: 'tuning', every, conditions: CONDITIONS, strays: true });
  const withEvidence = outcomes.filter((outcome): outcome is Outcome & { evidence: Evidence } => outcome.evidence !== null);
  const weights = train(withEvidence.map(({ evidence, right }) => ({ inputs: inputsOf(evidence), right })));
  writeFileSync(
    'src/speech/recogniser/confidenceWeights.ts',
    `/** Written by tests/tools/trainConfidence.ts. */\nexport const CONFIDENCE_WEIGHTS: readonly number[] = [\n${weights.map((weight) => `  ${Number(weight.toPrecision(5))},`).join('\n')}\n];\n`,
  );
  for (const threshold of [0.3, 0.5, 0.6, 0.7, 0.8, 0.85, 0.9]) {
    const passes = ({ evidence }: Outcome) => evidence !== null && confidenceOf(evidence, weights) >= threshold;
    const answers = outcomes.filter(({ isAnswer }) => isAnswer);
    const others = outcomes.filter(({ isAnswer }) => !isAnswer);
    console.log(
      `${threshold}: right and accepted ${share(answers.filter((one) => one.right && passes(one)).length, answers.length)}, wrong and accepted ${share(answers.filter((one) => !one.right && passes(one)).length, answers.length)}, others accepted ${share(others.filter(passes).length, others.length)} of ${others.length}`,
    );
  }
}

await main();
