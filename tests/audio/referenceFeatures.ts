/** Cepstra of a sound by Debian's `pocketsphinx_batch`, which writes what its front end makes. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { SPHINX_MODEL_FOLDER } from '../tools/sphinxModel.ts';

/** @returns frames x 13, without mean subtraction, noise removal and voice detection */
export function referenceCepstra(samples: Int16Array): Float32Array {
  const folder = mkdtempSync(join(tmpdir(), 'features-'));
  try {
    writeFileSync(join(folder, '0.raw'), Buffer.from(samples.buffer, samples.byteOffset, samples.byteLength));
    writeFileSync(join(folder, 'list'), '0\n');
    writeFileSync(join(folder, 'grammar'), '#JSGF V1.0;\ngrammar one;\npublic <one> = one;\n');
    writeFileSync(join(folder, 'dict'), 'one W AH N\n');
    const { status } = spawnSync('pocketsphinx_batch', [
      '-hmm',
      SPHINX_MODEL_FOLDER,
      '-dict',
      join(folder, 'dict'),
      '-jsgf',
      join(folder, 'grammar'),
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
      '-remove_noise',
      'no',
      '-remove_silence',
      'no',
      '-mfclogdir',
      folder,
    ]);
    if (status !== 0) throw new Error('pocketsphinx_batch failed');
    const file = readdirSync(folder).find((name) => name.endsWith('.mfc'));
    if (!file) throw new Error('no features were written');
    const bytes = readFileSync(join(folder, file));
    const count = bytes.readInt32LE(0);
    return Float32Array.from({ length: count }, (_, index) => bytes.readFloatLE(4 + 4 * index));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
