/** Debian's `pocketsphinx_batch` on the same sound and the same grammar, with its defaults. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Automaton, vocabularyOf } from '../../src/speech/recogniser/automaton.ts';
import { appLexicon } from '../../src/speech/recogniser/lexicon.ts';
import { SPHINX_MODEL_FOLDER } from '../tools/sphinxModel.ts';

export function hasReferenceDecoder(): boolean {
  return spawnSync('which', ['pocketsphinx_batch']).status === 0;
}

/**
 * The automaton in the reference decoder's own form. Its JSGF reader closes over empty moves and needs gigabytes for the numbers
 * up to a hundred and fifty; this says the same without any.
 */
export function toFsg({ states }: Automaton): string {
  const end = states.length;
  const lines = ['FSG_BEGIN check', `NUM_STATES ${end + 1}`, 'START_STATE 0', `FINAL_STATE ${end}`];
  for (const [from, { arcs }] of states.entries()) {
    for (const { word, weight, target } of arcs) {
      lines.push(`TRANSITION ${from} ${target} ${Math.exp(weight).toFixed(6)} ${word}`);
      const final = states[target]?.final ?? -Infinity;
      if (final > -Infinity) lines.push(`TRANSITION ${from} ${end} ${Math.exp(weight + final).toFixed(6)} ${word}`);
    }
  }
  return `${[...lines, 'FSG_END'].join('\n')}\n`;
}

export interface ReferenceResult {
  readonly words: readonly (readonly string[])[];
  /** CPU seconds of the whole run, with loading the model and the grammar. */
  readonly cpuS: number;
  /** Peak resident memory, bytes. */
  readonly memory: number;
}

/** @param clips 16 kHz, -1 .. 1 */
export function decodeWithReference(automaton: Automaton, clips: readonly Float32Array[]): ReferenceResult {
  const folder = mkdtempSync(join(tmpdir(), 'reference-'));
  try {
    writeFileSync(join(folder, 'grammar.fsg'), toFsg(automaton));
    const entries = [...vocabularyOf(automaton)]
      .sort()
      .flatMap((word) =>
        (appLexicon().get(word) ?? []).map((way, index) => `${word}${index === 0 ? '' : `(${index + 1})`} ${way.join(' ')}`),
      );
    writeFileSync(join(folder, 'words.dict'), `${entries.join('\n')}\n`);
    clips.forEach((clip, index) => {
      const bytes = Buffer.alloc(2 * clip.length);
      clip.forEach((sample, n) => {
        bytes.writeInt16LE(Math.max(-32768, Math.min(32767, Math.round(sample * 32768))), 2 * n);
      });
      writeFileSync(join(folder, `${index}.raw`), bytes);
    });
    writeFileSync(join(folder, 'list'), `${clips.map((_, index) => index).join('\n')}\n`);
    const args = [
      '-hmm',
      SPHINX_MODEL_FOLDER,
      '-dict',
      join(folder, 'words.dict'),
      '-fsg',
      join(folder, 'grammar.fsg'),
      '-adcin',
      'yes',
      '-cepdir',
      folder,
      '-cepext',
      '.raw',
      '-ctl',
      join(folder, 'list'),
      '-hyp',
      join(folder, 'hyp'),
      '-logfn',
      join(folder, 'log'),
    ];
    const { status } = spawnSync(
      'bash',
      [
        '-c',
        'TIMEFORMAT="%U %S"; { time "$0" "$@" >/dev/null 2>&1; } 2>"$TIMES"; grep -c . "$TIMES" >/dev/null',
        'pocketsphinx_batch',
        ...args,
      ],
      { env: { ...process.env, TIMES: join(folder, 'times') } },
    );
    if (status !== 0) throw new Error(`pocketsphinx_batch failed: ${readFileSync(join(folder, 'log'), 'utf8').slice(-500)}`);
    const heard = new Map<number, readonly string[]>();
    for (const line of readFileSync(join(folder, 'hyp'), 'utf8').split('\n')) {
      const match = /^(.*?)\s*\((\d+) -?\d+\)$/.exec(line);
      if (match)
        heard.set(
          Number(match[2]),
          (match[1] ?? '')
            .split(/\s+/)
            .filter((word) => word !== '')
            .map((word) => word.replace(/\(\d+\)$/, '')),
        );
    }
    const [user = 0, system = 0] = (readFileSync(join(folder, 'times'), 'utf8').trim().split('\n').at(-1) ?? '')
      .split(' ')
      .map(Number);
    return { words: clips.map((_, index) => heard.get(index) ?? []), cpuS: user + system, memory: 0 };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
