/**
 * Renders the bundled voice: `npx tsx tests/tools/renderVoice.ts`
 *
 * Needs `flite` (Debian package `flite`; its voice `slt`, free to use and distribute, notice beside the file). Run it again
 * whenever lines of the catalogue, the dialogue or the judgements have changed; a test fails until that is done. The same
 * inventory gives the same file, byte for byte. Clips are cached in `node_modules/.cache/voice`, so that a second run takes
 * seconds; delete that folder to render everything afresh (six minutes of processor time).
 *
 * Writes `public/voice/slt.voice` (the packed voice) and `public/voice/slt.json` (what is in it, with its SHA-256).
 * `--list` prints what would be rendered and stops.
 */
import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import type { SpokenSentence } from '../../src/speech/mouthClips/spokenWords.ts';
import { type Frame, HOP, ORDER, SAMPLE_RATE } from '../../src/speech/mouthClips/vocoder.ts';
import { VOICE_FILE } from '../../src/speech/mouthClips/voiceFile.ts';
import { analyze, power } from './renderVoiceAnalysis.ts';
import { collectInventory } from './renderVoiceInventory.ts';
import { type Clip, packVoice } from './renderVoicePack.ts';
import { readWav } from './renderVoiceWav.ts';

const VOICE = 'slt';
const ROOT = new URL('../..', import.meta.url).pathname;
const OUT = join(ROOT, 'public/voice');
const CACHE = join(ROOT, 'node_modules/.cache/voice');
/** Rises when the rendering or the analysis changes, so that old clips in the cache are not used. */
const RECIPE = 1;
/** Level that every clip is brought to, over its sounding frames: full scale 1. */
const TARGET_RMS = 0.13;
/** Sound around a part that the analysis may look at. */
const NEAR_S = 0.08;
/** Synthesizers running at a time. */
const AT_ONCE = 8;
/** Sound kept before and after a line. */
const MARGIN_S = 0.02;

/** How the synthesizer has to be asked, where it reads a word as another one than we mean. */
const RESPELLED: Readonly<Record<string, string>> = {
  A: 'ay',
  read: 'reed',
  use: 'yooz',
  close: 'kloze',
  lifepo: 'life po',
};
/** Words after which `read`, `use` and `close` are not what is to be done. */
const NOT_A_VERB_AFTER = new Set(['was', 'were', 'is', 'has', 'have', 'had', 'been', 'of', 'the', 'in', 'too', 'very', 'last']);

const run = promisify(execFile);

function respell(words: readonly string[]): string[] {
  return words.map((word, index) => {
    const before = words[index - 1] ?? '';
    const isVerb = !['read', 'use', 'close'].includes(word) || !NOT_A_VERB_AFTER.has(before);
    return isVerb ? (RESPELLED[word] ?? word) : word;
  });
}

let spoken = 0;

/** Speak a text and say where each sound ends. */
async function speak(
  text: string,
  folder: string,
): Promise<{ samples: Float32Array; segments: { name: string; end: number }[] }> {
  const file = join(folder, `${spoken++}.wav`);
  const { stdout } = await run('flite', ['-voice', VOICE, '-psdur', '-t', text, '-o', file]);
  const segments = stdout
    .trim()
    .split(/\s+/)
    .map((item) => {
      const [name = '', end = 'NaN'] = item.split(':');
      return { name, end: Number(end) };
    });
  const samples = readWav(readFileSync(file));
  rmSync(file);
  return { samples, segments };
}

/** A whole sentence, its own silences cut off. */
async function renderLine(sentence: SpokenSentence, folder: string): Promise<Frame[]> {
  let text = '';
  const words: string[] = [];
  for (const item of sentence.items) {
    if ('word' in item) words.push(item.word);
    else words.push(item.pause === 'long' ? ';' : ',');
  }
  for (const word of respell(words)) text += /^[,;]$/.test(word) ? word : ` ${word}`;
  const { samples, segments } = await speak(`${text.trim()}${sentence.ending}`, folder);
  const first = segments.findIndex(({ name }) => name !== 'pau');
  const last = segments.findLastIndex(({ name }) => name !== 'pau');
  const from = (segments[first - 1]?.end ?? 0) - MARGIN_S;
  const to = (segments[last]?.end ?? samples.length / SAMPLE_RATE) + MARGIN_S;
  return cut(samples, from, to);
}

/** Words as they sound in the middle of a sentence: between two others, at the borders that the synthesizer names. */
async function renderPart(words: string, folder: string): Promise<Frame[]> {
  const { samples, segments } = await speak(`say ${respell(words.split(' ')).join(' ')} now`, folder);
  const sounding = segments.filter(({ name }) => name !== 'pau');
  const [s, ey] = sounding;
  const [n, aw] = sounding.slice(-2);
  if (s?.name !== 's' || ey?.name !== 'ey' || n?.name !== 'n' || aw?.name !== 'aw') throw new Error(`no borders in "${words}"`);
  const last = segments[segments.indexOf(n) - 1]?.end ?? ey.end;
  // Only what is near is analyzed: most of the carrier is thrown away.
  const from = Math.max(0, Math.round(((ey.end - NEAR_S) * SAMPLE_RATE) / HOP) * HOP);
  const near = samples.slice(from, Math.round((last + NEAR_S) * SAMPLE_RATE));
  return cut(near, ey.end - from / SAMPLE_RATE, last - from / SAMPLE_RATE);
}

function cut(samples: Float32Array, fromS: number, toS: number): Frame[] {
  const first = Math.max(0, Math.round((fromS * SAMPLE_RATE) / HOP));
  const last = Math.min(Math.floor(samples.length / HOP), Math.max(first + 2, Math.round((toS * SAMPLE_RATE) / HOP)));
  return level(analyze(samples, first, last), samples, first);
}

/** All clips equally loud, measured where they sound. */
function level(frames: readonly Frame[], samples: Float32Array, first: number): Frame[] {
  const powers = frames.map((_, i) => power(samples, (first + i) * HOP, HOP));
  const loudest = Math.max(...powers);
  const sounding = powers.filter((value) => value > loudest / 100);
  const rms = Math.sqrt(sounding.reduce((sum, value) => sum + value, 0) / sounding.length);
  return frames.map((frame) => ({ ...frame, gain: (frame.gain * TARGET_RMS) / Math.max(rms, 1e-3) }));
}

async function cached(key: string, render: () => Promise<Frame[]>): Promise<Frame[]> {
  const name = createHash('sha256')
    .update(JSON.stringify([RECIPE, VOICE, ORDER, HOP, key]))
    .digest('hex')
    .slice(0, 32);
  const file = join(CACHE, name);
  const width = ORDER + 3;
  try {
    const bytes = readFileSync(file);
    const values = new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length));
    return Array.from({ length: values.length / width }, (_, i) => ({
      lsf: values.slice(i * width, i * width + ORDER),
      gain: values[i * width + ORDER] ?? 0,
      pitch: values[i * width + ORDER + 1] ?? 0,
      voicing: values[i * width + ORDER + 2] ?? 0,
    }));
  } catch {
    const frames = await render();
    const values = Float32Array.from(frames.flatMap((f) => [...f.lsf, f.gain, f.pitch, f.voicing]));
    // Whole or not at all: another run may be reading the same folder.
    writeFileSync(`${file}.${process.pid}`, new Uint8Array(values.buffer));
    renameSync(`${file}.${process.pid}`, file);
    return frames;
  }
}

const inventory = collectInventory(ROOT);
if (process.argv.includes('--list')) {
  for (const line of inventory.lines.keys()) console.log(`line\t${line}`);
  for (const part of inventory.parts) console.log(`part\t${part}`);
  process.exit(0);
}

mkdirSync(CACHE, { recursive: true });
mkdirSync(OUT, { recursive: true });
const folder = mkdtempSync(join(tmpdir(), 'render-voice-'));
const clips: Clip[] = [];
try {
  const jobs = [
    ...[...inventory.lines].map(([words, sentence]) => ({
      words,
      kind: 'line' as const,
      key: `line ${words} ${JSON.stringify(sentence)}`,
      render: () => renderLine(sentence, folder),
    })),
    ...[...inventory.parts].map((words) => ({
      words,
      kind: 'part' as const,
      key: `part ${words}`,
      render: () => renderPart(words, folder),
    })),
  ];
  // Several at a time: most of it is waiting for the synthesizer to start.
  let next = 0;
  const worker = async (): Promise<void> => {
    for (let index = next++; index < jobs.length; index = next++) {
      const job = jobs[index];
      if (job === undefined) return;
      clips[index] = { words: job.words, kind: job.kind, frames: await cached(job.key, job.render) };
      if (index % 500 === 499) console.log(`${index + 1} of ${jobs.length}`);
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, worker));
} finally {
  rmSync(folder, { recursive: true });
}

const file = packVoice(VOICE, clips);
const seconds = (kind: Clip['kind']): number =>
  Math.round(
    (clips.filter((clip) => clip.kind === kind).reduce((sum, { frames }) => sum + frames.length, 0) * HOP) / SAMPLE_RATE,
  );
const about = {
  file: VOICE_FILE,
  format: 1,
  voice: VOICE,
  synthesizer: 'flite 2.2',
  license: 'slt.LICENSE.txt',
  bytes: file.length,
  sha256: createHash('sha256').update(file).digest('hex'),
  lines: inventory.lines.size,
  parts: inventory.parts.size,
  seconds: { lines: seconds('line'), parts: seconds('part') },
};
writeFileSync(join(OUT, VOICE_FILE), file);
writeFileSync(join(OUT, 'slt.json'), `${JSON.stringify(about, null, 2)}\n`);
console.log(about);
