/**
 * The ears' table: `npx tsx tests/bench/ears.ts [every]`. Reporting clips under every condition. Nothing is fitted to them, but
 * their errors have been read and prompted two changes: they are not blind. Shown
 * beside the reference decoder on the same sound and the same grammar. Takes many minutes; `every` takes each n-th clip.
 */

import { readFileSync, statSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import { TRUST } from '../../src/domain/language/trust.ts';
import { readAcousticModel } from '../../src/speech/recogniser/acousticModel.ts';
import { compileGrammar } from '../../src/speech/recogniser/automaton.ts';
import { requestRule } from '../../src/speech/recogniser/requestGrammar.ts';
import { CONDITIONS, type Condition, counted, hearConditions, meaningOf, type Outcome, soundOf } from '../audio/conditions.ts';
import { decodeWithReference, hasReferenceDecoder } from '../audio/referenceDecoder.ts';
import { CHECKS, requestOf } from '../audio/sentences.ts';
import { loadClips, readClip } from '../tools/makeClips.ts';

/** From here on the app takes a value with a read-back; below it asks. */
const ACCEPTED = TRUST['built-in'].accept;

const percent = (part: number, whole: number) => (whole === 0 ? '—' : ((100 * part) / whole).toFixed(1));
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);

function reference(condition: Condition, every: number) {
  const all = loadClips().filter((clip) => clip.set === 'reporting');
  const talk = all.filter((clip) => clip.check === null).map(readClip);
  const clips = all.filter((clip, index) => index % every === 0 && clip.check !== null);
  let [exact, right, cpuS, seconds] = [0, 0, 0, 0];
  for (const check of CHECKS) {
    const own = clips.filter((clip) => clip.check === check);
    if (own.length === 0) continue;
    const sounds = own.map((clip) => soundOf(clip, condition, talk).samples);
    const result = decodeWithReference(compileGrammar(requestRule(requestOf(check).request)), sounds);
    cpuS += result.cpuS;
    seconds += sounds.reduce((sum, sound) => sum + sound.length / 16_000, 0);
    for (const [index, clip] of own.entries()) {
      const words = result.words[index] ?? [];
      if (counted(words) === counted(clip.words)) exact += 1;
      if (
        counted(words) === counted(clip.words) ||
        (words.length > 0 && meaningOf(check, words) === meaningOf(check, clip.words))
      )
        right += 1;
    }
  }
  return { exact: percent(exact, clips.length), right: percent(right, clips.length), factor: (cpuS / seconds).toFixed(3) };
}

/** Something that would be written down; a command or something unclear would not. */
const isWrongValue = ({ right, meaning }: Outcome) => !right && /^(reading|verdict|date) /.test(meaning);

/** Only what must not be accepted, all of it: `npx tsx tests/bench/ears.ts --others`. */
async function others(): Promise<void> {
  const outcomes = await hearConditions({ set: 'reporting', every: 1, conditions: CONDITIONS, answers: false });
  for (const name of new Set(outcomes.map(({ condition }) => condition))) {
    const all = outcomes.filter(({ condition }) => condition === name);
    const accepted = all.filter(({ confidence }) => confidence >= ACCEPTED).length;
    const taken = all.filter((one) => one.taken).length;
    console.log(`${name}: ${accepted} of ${all.length} accepted, ${taken} taken without a question`);
  }
  const accepted = outcomes.filter(({ confidence }) => confidence >= ACCEPTED).length;
  console.log(`all: ${percent(accepted, outcomes.length)} % of ${outcomes.length}`);
}

async function main(): Promise<void> {
  if (process.argv.includes('--others')) return others();
  const every = Number(process.argv[2] ?? 1);
  const started = performance.now();
  readAcousticModel(new Uint8Array(readFileSync('public/ears/model.bin')));
  console.log(`model ${statSync('public/ears/model.bin').size} bytes, read in ${(performance.now() - started).toFixed(0)} ms`);
  console.log(
    '| condition | SNR 300–3400 Hz, dB | words exact, % | meaning right, % | among three, % | right and accepted, % | wrong and accepted, % | of these wrong values, % | taken by the app without a question: right, % | wrong values, % | real-time factor | wait, ms (95 %) | reference: words, % | meaning, % | factor |',
  );
  console.log('|---|---|---|---|---|---|---|---|---|---|---|---|---|---|---|');
  const unasked: string[] = [];
  const only = process.argv.find((argument) => argument.startsWith('--only='))?.slice('--only='.length) ?? '';
  for (const condition of CONDITIONS.filter(({ name }) => name.includes(only))) {
    const outcomes = await hearConditions({
      set: 'reporting',
      every,
      conditions: [condition],
      noiseAlone: condition === CONDITIONS.at(-1),
    });
    const answers = outcomes.filter(({ isAnswer }) => isAnswer);
    const accepted = answers.filter(({ confidence }) => confidence >= ACCEPTED);
    const waits = answers.map(({ waitMs }) => waitMs).sort((a, b) => a - b);
    const theirs = hasReferenceDecoder() ? reference(condition, every) : { exact: '—', right: '—', factor: '—' };
    console.log(
      `| ${[
        condition.name,
        mean(answers.map(({ bandSnrDb }) => bandSnrDb)).toFixed(0),
        percent(answers.filter(({ exact }) => exact).length, answers.length),
        percent(answers.filter(({ right }) => right).length, answers.length),
        percent(answers.filter(({ amongThree }) => amongThree).length, answers.length),
        percent(accepted.filter(({ right }) => right).length, answers.length),
        percent(accepted.filter(({ right }) => !right).length, answers.length),
        percent(accepted.filter(isWrongValue).length, answers.length),
        percent(answers.filter(({ right, taken }) => taken && right).length, answers.length),
        percent(answers.filter((one) => one.taken && isWrongValue(one)).length, answers.length),
        (
          answers.reduce((sum, { cpuMs }) => sum + cpuMs, 0) /
          1000 /
          answers.reduce((sum, { seconds }) => sum + seconds, 0)
        ).toFixed(3),
        (waits[Math.floor(0.95 * waits.length)] ?? 0).toFixed(0),
        theirs.exact,
        theirs.right,
        theirs.factor,
      ].join(' | ')} |`,
    );
    if (process.argv.includes('--errors')) {
      for (const { clip, heard, confidence, right } of answers)
        if (!right)
          console.log(
            `    ${clip.voice} ${clip.check}: ${clip.words.join(' ')} -> ${heard.join(' ')} (${confidence.toFixed(2)})`,
          );
    }
    const talk = outcomes.filter(({ isAnswer, condition: name }) => !isAnswer && !name.includes('alone'));
    unasked.push(
      `other talk, ${condition.name}: ${percent(talk.filter(({ confidence }) => confidence >= ACCEPTED).length, talk.length)} % of ${talk.length} accepted`,
    );
    if (condition === CONDITIONS.at(-1)) {
      for (const noise of ['wind', 'gusts', 'engine']) {
        const alone = outcomes.filter(({ condition: name }) => name === `${noise} alone`);
        unasked.push(
          `${noise} alone: ${percent(alone.filter(({ confidence }) => confidence >= ACCEPTED).length, alone.length)} % of ${alone.length} accepted`,
        );
      }
    }
  }
  console.log(`\n${unasked.join('\n')}`);
  console.log(`\nmemory ${(process.memoryUsage().rss / 1e6).toFixed(0)} MB resident for the whole of Node`);
}

await main();
