/**
 * Builds the speech clips of the evaluation: `npx tsx tests/tools/makeClips.ts [reduced]`. Not committed: everything comes from
 * Debian packages and seeds. Tuning and reporting clips have different sentences and are kept apart.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { hash, pick, seeded } from '../audio/random.ts';
import { CHECKS, drawRecordedNumber, drawSentence, OTHER_TALK, requestOf } from '../audio/sentences.ts';
import { joined, makeFolder, missingTools, prepare, recording, SPHINX_TESTS, VOICES, writeJson } from '../audio/voices.ts';
import { parseWav, readWav, writeWav } from '../audio/wav.ts';

export interface Clip {
  readonly file: string;
  readonly set: 'tuning' | 'reporting';
  readonly voice: string;
  /** The check whose grammar hears it; null for talk that no grammar allows. */
  readonly check: string | null;
  readonly words: readonly string[];
}

const VERSION = 4;

/** How many clips, and of whom. */
interface ClipPlan {
  readonly folder: string;
  readonly sets: readonly Clip['set'][];
  readonly voices: readonly string[];
  /** Sentences a check. */
  readonly perCheck: Readonly<Record<Clip['set'], number>>;
  readonly recorded: Readonly<Record<Clip['set'], number>>;
  /** Times that each sentence of other talk is said. */
  readonly talk: number;
}

const FULL: ClipPlan = {
  folder: 'node_modules/.cache/ears/clips',
  sets: ['tuning', 'reporting'],
  voices: Object.keys(VOICES),
  perCheck: { tuning: 20, reporting: 26 },
  recorded: { tuning: 40, reporting: 60 },
  talk: 3,
};

/** Enough to notice a fall, in a minute or two: the quick voices, no tuning clips. */
const REDUCED: ClipPlan = {
  folder: 'node_modules/.cache/ears/clips-reduced',
  sets: ['reporting'],
  voices: Object.keys(VOICES).filter((name) => !name.startsWith('festival')),
  perCheck: { tuning: 0, reporting: 4 },
  recorded: { tuning: 0, reporting: 16 },
  talk: 1,
};

const TELEPHONE = [
  'vm-intro',
  'vm-instructions',
  'demo-congrats',
  'conf-onlyperson',
  'dir-intro',
  'queue-periodic-announce',
  'tt-monkeysintro',
  'privacy-prompt',
  'vm-tempgreeting',
  'agent-newlocation',
  'conf-adminmenu',
  'vm-reachoper',
  'demo-moreinfo',
  'vm-whichbox',
  'demo-thanks',
  'pbx-transfer',
  'ss-noservice',
  'sorry-youre-having-problems',
  'to-call-this-number',
  'vm-isunavail',
];

function build({ folder, sets, voices, perCheck, recorded, talk }: ClipPlan): readonly Clip[] {
  makeFolder(folder);
  const clips: Clip[] = [];
  const scratch = join(folder, 'scratch.wav');
  const keep = (clip: Omit<Clip, 'file'>, samples: Float32Array) => {
    const file = join(folder, `${clips.length}.wav`);
    writeWav(file, { rate: 16_000, samples });
    clips.push({ ...clip, file });
  };
  const speak = (voice: string, text: string) => prepare((VOICES[voice] as (typeof VOICES)[string])(text, scratch));
  for (const set of sets) {
    // Every second of what nobody asked for belongs to tuning, the others to reporting.
    const half = <T>(all: readonly T[]) => all.filter((_, index) => (index % 2 === 0) === (set === 'tuning'));
    for (const check of CHECKS) {
      const random = seeded(hash(`${set} ${check}`));
      const { request } = requestOf(check);
      for (let index = 0; index < perCheck[set]; index += 1) {
        const { words } = drawSentence(check, request, random);
        const voice = voices[(index + hash(check)) % voices.length] as string;
        keep({ set, voice, check, words }, speak(voice, words.join(' ')));
      }
    }
    const random = seeded(hash(`${set} recorded`));
    for (let index = 0; index < recorded[set]; index += 1) {
      const { check, words, recordings = [] } = drawRecordedNumber(random);
      const parts = recordings.map((name) => recording(name, scratch));
      keep({ set, voice: 'recorded woman', check, words }, joined(parts, 0.02 + 0.06 * random()));
    }
    for (const text of half(OTHER_TALK)) {
      for (let index = 0; index < talk; index += 1) {
        const voice = pick(random, voices);
        keep({ set, voice, check: null, words: text.split(' ') }, speak(voice, text));
      }
    }
    for (const name of half(TELEPHONE).slice(0, 4 * talk)) {
      const sound = recording(name, scratch);
      for (let at = 0; at + 16_000 < sound.length && at < 10 * 16_000; at += 32_000) {
        keep({ set, voice: 'recorded woman', check: null, words: [name] }, sound.slice(at, at + 32_000));
      }
    }
    for (const part of half(['0870', '0880', '0890', '0920', '0930'])) {
      const sound = prepare(readWav(join(SPHINX_TESTS, `librivox/sense_and_sensibility_01_austen_64kb-${part}.wav`)));
      for (let at = 0; at + 16_000 < sound.length && at < 12 * 16_000; at += 40_000) {
        keep({ set, voice: 'reader', check: null, words: ['prose'] }, sound.slice(at, at + 40_000));
      }
    }
  }
  writeJson(join(folder, 'index.json'), { version: VERSION, clips });
  return clips;
}

/** The clips, built when they are not there yet. @throws Error naming what is not installed */
export function loadClips(size: 'full' | 'reduced' = 'full'): readonly Clip[] {
  const plan = size === 'full' ? FULL : REDUCED;
  const index = join(plan.folder, 'index.json');
  if (existsSync(index)) {
    const { version, clips } = JSON.parse(readFileSync(index, 'utf8')) as { version: number; clips: readonly Clip[] };
    if (version === VERSION) return clips;
  }
  const missing = missingTools();
  if (missing.length > 0) throw new Error(`Not installed: ${missing.join(', ')}`);
  return build(plan);
}

export function readClip({ file }: Clip): Float32Array {
  return parseWav(readFileSync(file), file).samples;
}

if (process.argv[1]?.endsWith('makeClips.ts')) {
  const clips = loadClips(process.argv[2] === 'reduced' ? 'reduced' : 'full');
  const count = (set: Clip['set'], talk: boolean) =>
    clips.filter((clip) => clip.set === set && (clip.check === null) === talk).length;
  for (const set of ['tuning', 'reporting'] as const)
    console.log(`${set}: ${count(set, false)} answers, ${count(set, true)} clips of other talk`);
}
