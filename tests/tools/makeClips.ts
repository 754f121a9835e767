/**
 * Builds the speech clips of the evaluation: `npx tsx tests/tools/makeClips.ts [reduced]`. Not committed: everything comes from
 * Debian packages and seeds. Tuning and reporting clips have different sentences and are kept apart.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { hash, pick, seeded } from '../audio/random.ts';
import { CHECKS, drawRecordedNumber, drawSentence, OTHER_TALK, requestOf, type Sentence } from '../audio/sentences.ts';
import { joined, makeFolder, missingTools, prepare, recording, SPHINX_TESTS, VOICES, writeJson } from '../audio/voices.ts';
import { parseWav, readWav, writeWav } from '../audio/wav.ts';

export const CLIP_FOLDER = 'node_modules/.cache/ears/clips';

export interface Clip {
  readonly file: string;
  readonly set: 'tuning' | 'reporting';
  readonly voice: string;
  /** The check whose grammar hears it; null for talk that no grammar allows. */
  readonly check: string | null;
  readonly words: readonly string[];
}

const VERSION = 3;

/** Sentences a check and set. */
const PER_CHECK = { tuning: 20, reporting: 26 } as const;
const RECORDED = { tuning: 40, reporting: 60 } as const;

function build(): readonly Clip[] {
  makeFolder(CLIP_FOLDER);
  const clips: Clip[] = [];
  const scratch = join(CLIP_FOLDER, 'scratch.wav');
  const keep = (clip: Omit<Clip, 'file'>, samples: Float32Array) => {
    const file = join(CLIP_FOLDER, `${clips.length}.wav`);
    writeWav(file, { rate: 16_000, samples });
    clips.push({ ...clip, file });
  };
  const voices = Object.keys(VOICES);
  const speak = (voice: string, text: string) => prepare((VOICES[voice] as (typeof VOICES)[string])(text, scratch));
  for (const set of ['tuning', 'reporting'] as const) {
    for (const check of CHECKS) {
      const random = seeded(hash(`${set} ${check}`));
      const { request } = requestOf(check);
      for (let index = 0; index < PER_CHECK[set]; index += 1) {
        const sentence: Sentence = drawSentence(check, request, random);
        const voice = voices[(index + hash(check)) % voices.length] as string;
        keep({ set, voice, check, words: sentence.words }, speak(voice, sentence.words.join(' ')));
      }
    }
    const random = seeded(hash(`${set} recorded`));
    for (let index = 0; index < RECORDED[set]; index += 1) {
      const { check, words, recordings } = drawRecordedNumber(random);
      keep(
        { set, voice: 'recorded woman', check, words },
        joined(
          (recordings ?? []).map((name) => recording(name, scratch)),
          0.02 + 0.06 * random(),
        ),
      );
    }
    const half = OTHER_TALK.filter((_, index) => (index % 2 === 0) === (set === 'tuning'));
    for (const text of half)
      for (let index = 0; index < 3; index += 1) {
        const voice = pick(random, voices);
        keep({ set, voice, check: null, words: text.split(' ') }, speak(voice, text));
      }
    const telephone = [
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
    for (const name of telephone.filter((_, index) => (index % 2 === 0) === (set === 'tuning'))) {
      const sound = recording(name, scratch);
      for (let at = 0; at + 16_000 < sound.length && at < 10 * 16_000; at += 32_000) {
        keep({ set, voice: 'recorded woman', check: null, words: [name] }, sound.slice(at, at + 32_000));
      }
    }
    const prose = ['0870', '0880', '0890', '0920', '0930'].filter((_, index) => (index % 2 === 0) === (set === 'tuning'));
    for (const part of prose) {
      const sound = prepare(readWav(join(SPHINX_TESTS, `librivox/sense_and_sensibility_01_austen_64kb-${part}.wav`)));
      for (let at = 0; at + 16_000 < sound.length && at < 12 * 16_000; at += 40_000) {
        keep({ set, voice: 'reader', check: null, words: ['prose'] }, sound.slice(at, at + 40_000));
      }
    }
  }
  writeJson(join(CLIP_FOLDER, 'index.json'), { version: VERSION, clips });
  return clips;
}

/** The clips, built when they are not there yet. @throws Error naming what is not installed */
export function loadClips(): readonly Clip[] {
  const index = join(CLIP_FOLDER, 'index.json');
  if (existsSync(index)) {
    const { version, clips } = JSON.parse(readFileSync(index, 'utf8')) as { version: number; clips: readonly Clip[] };
    if (version === VERSION) return clips;
  }
  const missing = missingTools();
  if (missing.length > 0) throw new Error(`Not installed: ${missing.join(', ')}`);
  return build();
}

export function readClip({ file }: Clip): Float32Array {
  return parseWav(readFileSync(file), file).samples;
}

if (process.argv[1]?.endsWith('makeClips.ts')) {
  const clips = loadClips();
  const count = (set: Clip['set'], talk: boolean) =>
    clips.filter((clip) => clip.set === set && (clip.check === null) === talk).length;
  for (const set of ['tuning', 'reporting'] as const)
    console.log(`${set}: ${count(set, false)} answers, ${count(set, true)} clips of other talk`);
}
