/** Speech for the tests: synthetic voices that Debian packages, and human recordings cut and joined. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Resampler } from '../../src/speech/recogniser/resampler.ts';
import { parseWav, readWav, type Sound } from './wav.ts';

const RATE = 16_000;
export const ALLISON = '/usr/share/asterisk/sounds/en_US_f_Allison';
export const SPHINX_TESTS = '/usr/share/pocketsphinx/test/data';

const run = (command: string, args: readonly string[], input?: string): Buffer => {
  const { status, stdout, stderr, error } = spawnSync(command, [...args], { input, maxBuffer: 64 * 1024 * 1024 });
  if (error || status !== 0) throw new Error(`${command} failed: ${error?.message ?? stderr.toString()}`);
  return stdout;
};

export type Voice = (text: string, scratch: string) => Sound;

const flite =
  (voice: string): Voice =>
  (text, scratch) => {
    run('flite', ['-voice', voice, '-t', text, '-o', scratch]);
    return readWav(scratch);
  };
const espeak =
  (voice: string, speed: number): Voice =>
  (text) =>
    parseWav(run('espeak-ng', ['-v', voice, '-s', String(speed), '--stdout', text]), voice);
const festival =
  (voice: string): Voice =>
  (text, scratch) => {
    run('text2wave', ['-eval', `(voice_${voice})`, '-o', scratch], text);
    return readWav(scratch);
  };

export const VOICES: Readonly<Record<string, Voice>> = {
  'flite-kal16': flite('kal16'),
  'flite-awb': flite('awb'),
  'flite-rms': flite('rms'),
  'flite-slt': flite('slt'),
  'festival-kal': festival('kal_diphone'),
  'festival-slt': festival('cmu_us_slt_arctic_hts'),
  'espeak-us': espeak('en-us', 150),
  'espeak-us-woman': espeak('en-us+f3', 150),
  'espeak-us-man': espeak('en-us+m3', 140),
};

/** At 16 kHz, silence cut from both ends, peak at a half. */
export function prepare({ rate, samples }: Sound): Float32Array {
  let speech = samples;
  if (rate !== RATE) {
    const padded = new Float32Array(samples.length + rate / 5);
    padded.set(samples);
    speech = new Resampler(rate, RATE).process(padded);
  }
  let peak = 0;
  for (const sample of speech) peak = Math.max(peak, Math.abs(sample));
  if (peak === 0) throw new Error('a voice gave silence');
  let first = 0;
  while (first < speech.length && Math.abs(speech[first] as number) < 0.02 * peak) first += 1;
  let last = speech.length - 1;
  while (last > first && Math.abs(speech[last] as number) < 0.02 * peak) last -= 1;
  const margin = 320;
  const cut = speech.slice(Math.max(0, first - margin), Math.min(speech.length, last + margin));
  return cut.map((sample) => (0.5 * sample) / peak);
}

const decoded = new Map<string, Float32Array>();

/** One of the recordings of a professional speaker (G.722, 16 kHz). @param name "digits/60" */
export function recording(name: string, scratch: string): Float32Array {
  const known = decoded.get(name);
  if (known) return known;
  const path = join(ALLISON, `${name}.g722`);
  run('ffmpeg', ['-nostdin', '-v', 'error', '-y', '-f', 'g722', '-i', path, '-ar', String(RATE), '-ac', '1', scratch]);
  const sound = prepare(readWav(scratch));
  decoded.set(name, sound);
  return sound;
}

/** Recordings one after the other with short pauses. */
export function joined(parts: readonly Float32Array[], pauseS: number): Float32Array {
  const pause = Math.round(pauseS * RATE);
  const length = parts.reduce((sum, part) => sum + part.length + pause, 0);
  const samples = new Float32Array(length);
  let at = 0;
  for (const part of parts) {
    samples.set(part, at);
    at += part.length + pause;
  }
  return samples;
}

export function makeFolder(path: string): void {
  rmSync(path, { recursive: true, force: true });
  mkdirSync(path, { recursive: true });
}

/** Whether everything that the clips are made of is installed; the missing names otherwise. */
export function missingTools(): readonly string[] {
  const missing = ['flite', 'espeak-ng', 'text2wave', 'ffmpeg'].filter((command) => spawnSync('which', [command]).status !== 0);
  if (!existsSync(ALLISON)) missing.push('asterisk-core-sounds-en-g722');
  if (!existsSync(SPHINX_TESTS)) missing.push('pocketsphinx-testdata');
  return missing;
}

export function writeJson(path: string, value: unknown): void {
  writeFileSync(path, `${JSON.stringify(value, null, 1)}\n`);
}
