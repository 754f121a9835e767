/**
 * What the bundled voice costs: `npx tsx tests/bench/mouth.ts`
 * Bytes beside other ways to keep the same speech, time to open the file, time to make a line.
 */
import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { joinText, limit } from '../../src/speech/mouthClips/joinLine.ts';
import { HOP, SAMPLE_RATE, synthesize } from '../../src/speech/mouthClips/vocoder.ts';
import { VOICE_FILE } from '../../src/speech/mouthClips/voiceFile.ts';
import { openVoicePack } from '../../src/speech/mouthClips/voicePack.ts';
import { sayToSamples } from '../tools/sayToWav.ts';

const file = readFileSync(new URL(`../../public/voice/${VOICE_FILE}`, import.meta.url));
const LINES = [
  'Left front tire. What is the cold pressure?',
  'Sixty-two, left front. Nine pounds below the placard.',
  'Before anything is switched on, read the house battery. How many volts?',
];

const median = (values: number[]): number => values.sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
const timed = (work: () => void): number => {
  const from = performance.now();
  work();
  return performance.now() - from;
};

const opening = median(Array.from({ length: 5 }, () => timed(() => openVoicePack(file))));
const pack = openVoicePack(file);
const seconds = (pack.frames * HOP) / SAMPLE_RATE;

/** IMA ADPCM (Recommended Practices for Enhancing Digital Audio Compatibility, IMA 1992): four bits a sample, after deflate. */
function adpcmBytes(samples: Float32Array): number {
  const indexes = [-1, -1, -1, -1, 2, 4, 6, 8];
  const steps = [7];
  while (steps.length < 89) steps.push(Math.floor((steps.at(-1) ?? 7) * 1.1 + 0.5));
  let [value, index] = [0, 0];
  const out = new Uint8Array(Math.ceil(samples.length / 2));
  samples.forEach((sample, i) => {
    const step = steps[index] ?? 7;
    const difference = Math.round(sample * 32_767) - value;
    const size = Math.min(7, Math.floor((Math.abs(difference) * 4) / step));
    const code = size | (difference < 0 ? 8 : 0);
    value = Math.max(-32_768, Math.min(32_767, value + Math.sign(difference || 1) * ((step * (2 * size + 1)) / 8)));
    index = Math.max(0, Math.min(88, index + (indexes[size] ?? 0)));
    out[i >> 1] = (out[i >> 1] ?? 0) | (code << (4 * (i & 1)));
  });
  return gzipSync(out, { level: 9 }).length;
}

const sample = LINES.map((line) => sayToSamples(line, pack));
const sampleSeconds = sample.reduce((sum, { length }) => sum + length, 0) / SAMPLE_RATE;
const adpcm = sample.reduce((sum, one) => sum + adpcmBytes(one), 0) / sampleSeconds;
const row = (name: string, perSecond: number) => ({
  kept: name,
  'bytes/s': Math.round(perSecond),
  'all clips, MB': Number(((perSecond * seconds) / 1e6).toFixed(2)),
});
console.table([
  row('16-bit samples, 16 kHz', 2 * SAMPLE_RATE),
  row('8-bit mu-law, 16 kHz', SAMPLE_RATE),
  row('IMA ADPCM 4-bit, 16 kHz, deflated', adpcm),
  row('Opus at 24 kbit/s (nominal)', 3000),
  row('this vocoder, deflated', file.length / seconds),
]);
console.table(
  LINES.map((line) => {
    const { sentences } = joinText(line, pack);
    const all = median(Array.from({ length: 9 }, () => timed(() => sentences.map((frames) => limit(synthesize(frames))))));
    const first = median(Array.from({ length: 9 }, () => timed(() => limit(synthesize(sentences[0] ?? [])))));
    return {
      line,
      'seconds of speech': sayToSamples(line, pack).length / SAMPLE_RATE,
      'all ms': all.toFixed(1),
      'first sentence ms': first.toFixed(1),
    };
  }),
);
console.log({ fileBytes: file.length, clips: pack.clips, secondsOfSpeech: Math.round(seconds), openMs: opening.toFixed(0) });
