/**
 * Every phrase that a check may be answered with, from nine synthetic voices in a quiet room: `npx tsx tests/bench/phrases.ts [check …]`.
 * Prints the phrases that few voices get across, which are no good to ask for, and those that are heard as something else, which may be
 * dangerous. No figure of the ears' table is fitted to it; the choice of words was. All checks take half an hour.
 */
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Expects } from '../../src/domain/checks/expects.ts';
import { requestRule } from '../../src/speech/recogniser/requestGrammar.ts';
import { meaningOf } from '../audio/conditions.ts';
import { hash, seeded } from '../audio/random.ts';
import { requestOf } from '../audio/sentences.ts';
import { prepare, VOICES } from '../audio/voices.ts';
import { catalogueRequests } from '../tools/catalogueRequests.ts';
import { hearSound, openEars } from '../tools/nodeEars.ts';

const RATE = 16_000;
/** Samples of quiet before the words. */
const LEAD = 5_333;
/** Heard by fewer voices than this, a phrase is listed as weak. */
const ENOUGH = 7;
/** From this confidence on a mistake is listed; the app takes an answer from 0.7. */
const WORTH_TELLING = 0.5;

interface Mistake {
  readonly check: string;
  readonly said: string;
  readonly heard: string;
  readonly voice: string;
  readonly confidence: number;
}

function phrasesOf(expects: Expects): readonly string[] {
  if (expects.kind === 'state') return [...expects.ok, ...expects.problem];
  if (expects.kind === 'choice') return expects.options.flatMap(({ phrases }) => phrases);
  return expects.kind === 'count' ? ['none', ...expects.nonePhrases] : [];
}

function inQuiet(speech: Float32Array, seed: string): Float32Array {
  const random = seeded(hash(seed));
  const samples = Float32Array.from({ length: speech.length + 2 * RATE }, () => 0.0012 * (random() - 0.5));
  for (const [n, sample] of speech.entries()) samples[LEAD + n] = (samples[LEAD + n] ?? 0) + sample;
  return samples;
}

const chosen = process.argv.slice(2);
const checks = [...new Set(catalogueRequests().map(({ check }) => check))].filter((check) => !check.startsWith('call-'));
const scratch = join(tmpdir(), `phrase-${process.pid}.wav`);
const ears = await openEars();
const weak: { readonly check: string; readonly said: string; readonly voices: number }[] = [];
const mistakes: Mistake[] = [];
let [phrases, heard] = [0, 0];
for (const check of checks.filter((one) => chosen.length === 0 || chosen.includes(one))) {
  const { request } = requestOf(check);
  const decoder = ears.networks.compile(requestRule(request));
  for (const said of new Set(phrasesOf(request.expects))) {
    const meant = meaningOf(check, said.split(' '));
    let voices = 0;
    for (const [voice, speak] of Object.entries(VOICES)) {
      const samples = inQuiet(prepare(speak(said, scratch)), `${check} ${said} ${voice}`);
      const [utterance] = hearSound(ears, decoder, { rate: RATE, samples }).utterances;
      const top = utterance?.decoded?.hypotheses[0];
      if (!top || utterance.type !== 'heard') continue;
      if (meaningOf(check, top.words) === meant) voices += 1;
      else if (top.confidence >= WORTH_TELLING)
        mistakes.push({ check, said, heard: top.words.join(' '), voice, confidence: Number(top.confidence.toFixed(2)) });
    }
    phrases += 1;
    heard += voices;
    if (voices < ENOUGH) weak.push({ check, said, voices });
  }
}
const all = phrases * Object.keys(VOICES).length;
console.log(`${phrases} phrases, heard ${((100 * heard) / Math.max(1, all)).toFixed(1)} % of ${all} times`);
console.log(`Heard from fewer than ${ENOUGH} of ${Object.keys(VOICES).length} voices:`);
console.table(weak.sort((a, b) => a.voices - b.voices));
console.log(`Heard as something else, confidence ${WORTH_TELLING} or more:`);
console.table(mistakes.sort((a, b) => b.confidence - a.confidence));
