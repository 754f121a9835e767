/**
 * What the bundled voice says, as a WAV file: `npx tsx tests/tools/sayToWav.ts "Sixty-two, left front." out.wav [rate]`
 * Prints one line of JSON: seconds, peak, level, how it was put together.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { chooseClips } from '../../src/speech/mouthClips/chooseClips.ts';
import { joinText, limit, PAUSE_FRAMES } from '../../src/speech/mouthClips/joinLine.ts';
import { spokenSentences } from '../../src/speech/mouthClips/spokenWords.ts';
import { HOP, SAMPLE_RATE, synthesize } from '../../src/speech/mouthClips/vocoder.ts';
import { VOICE_FILE } from '../../src/speech/mouthClips/voiceFile.ts';
import { openVoicePack, type VoicePack } from '../../src/speech/mouthClips/voicePack.ts';
import { writeWav } from './renderVoiceWav.ts';

/** The line as one run of samples, with the silences that the mouth leaves between sentences. */
export function sayToSamples(text: string, pack: VoicePack, rate = 1): Float32Array {
  const parts = joinText(text, pack).sentences.map((frames) => limit(synthesize(frames, rate)));
  const pause = Math.round((PAUSE_FRAMES.sentence * HOP) / rate);
  const total = parts.reduce((sum, part) => sum + part.length, 0) + pause * Math.max(0, parts.length - 1);
  const out = new Float32Array(total);
  let at = 0;
  for (const part of parts) {
    out.set(part, at);
    at += part.length + pause;
  }
  return out;
}

const [, script, text, file, rate] = process.argv;
if (script?.endsWith('sayToWav.ts') && text !== undefined && file !== undefined) {
  const pack = openVoicePack(readFileSync(new URL(`../../public/voice/${VOICE_FILE}`, import.meta.url)));
  const samples = sayToSamples(text, pack, rate === undefined ? 1 : Number(rate));
  writeFileSync(file, writeWav(samples, SAMPLE_RATE));
  const peak = samples.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  const rms = Math.sqrt(samples.reduce((sum, x) => sum + x * x, 0) / Math.max(1, samples.length));
  const pieces = spokenSentences(text).map((sentence) =>
    chooseClips(sentence, pack).pieces.map((piece) =>
      piece.kind === 'pause' ? ',' : piece.kind === 'line' ? `[${piece.words}]` : piece.words,
    ),
  );
  console.log(JSON.stringify({ seconds: samples.length / SAMPLE_RATE, peak, rms, pieces }));
}
