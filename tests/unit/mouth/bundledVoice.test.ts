/** The voice file that is shipped. When a test here fails after lines were changed: `npx tsx tests/tools/renderVoice.ts`. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { POSITIONS } from '../../../src/domain/checks/expects.ts';
import { UNITS } from '../../../src/domain/quantity/units.ts';
import { chooseClips, UNSAYABLE } from '../../../src/speech/mouthClips/chooseClips.ts';
import { type SpokenSentence, spokenSentences } from '../../../src/speech/mouthClips/spokenWords.ts';
import { SAMPLE_RATE } from '../../../src/speech/mouthClips/vocoder.ts';
import { VOICE_FILE } from '../../../src/speech/mouthClips/voiceFile.ts';
import { openVoicePack, type VoicePack } from '../../../src/speech/mouthClips/voicePack.ts';
import { collectInventory, type Inventory } from '../../tools/renderVoiceInventory.ts';
import { sayToSamples } from '../../tools/sayToWav.ts';

const FOLDER = new URL('../../../public/voice/', import.meta.url);
const ROOT = new URL('../../../', import.meta.url).pathname;

let file: Uint8Array;
let pack: VoicePack;
let inventory: Inventory;

beforeAll(() => {
  file = readFileSync(new URL(VOICE_FILE, FOLDER));
  pack = openVoicePack(file);
  inventory = collectInventory(ROOT);
}, 60_000);

/** Words that would have to be spelled, or could not be said at all. */
function unspoken(sentence: SpokenSentence): readonly string[] {
  const { pieces, unsaid } = chooseClips(sentence, pack);
  const said = pieces.map((piece) => (piece.kind === 'pause' ? '' : piece.words)).join(' ');
  const wanted = sentence.items.flatMap((item) => ('word' in item ? [item.word] : []));
  return [...unsaid, ...wanted.filter((word) => word.length > 1 && !` ${said.replace('?', '')} `.includes(` ${word} `))];
}

describe('the voice file', () => {
  it('is what the page about it says, and small enough', () => {
    const about = JSON.parse(readFileSync(new URL('slt.json', FOLDER), 'utf8'));
    expect(about.sha256).toBe(createHash('sha256').update(file).digest('hex'));
    expect(about.bytes).toBe(file.length);
    expect(file.length).toBeLessThan(3_500_000);
    expect(readFileSync(new URL(about.license, FOLDER), 'utf8')).toContain('Any modifications must be clearly marked as such.');
  });

  it('speaks every fixed line without spelling a word', () => {
    const missing = [...inventory.lines].flatMap(([line, sentence]) => unspoken(sentence).map((word) => `${word}: ${line}`));
    expect(missing).toEqual([]);
  });

  it('speaks every whole number to 999, every unit and every position', () => {
    const texts = [
      ...Array.from({ length: 1000 }, (_, value) => `${value}`),
      ...Object.values(UNITS).flatMap(({ spoken }) => spoken.filter((text) => text !== '')),
      ...POSITIONS.map((position) => position.replace('-', ' ')),
      ...Array.from({ length: 100 }, (_, value) => `12.${String(value).padStart(2, '0')}`),
    ];
    expect(texts.flatMap((text) => spokenSentences(text).flatMap(unspoken))).toEqual([]);
    expect(pack.has('part', UNSAYABLE)).toBe(true);
  });

  it('can spell anything', () => {
    for (const letter of 'ABCDEFGHIJKLMNOPQRSTUVWXYZ') expect(pack.has('part', letter)).toBe(true);
  });

  it.each([
    ['Sixty-two, left front.', 1, 3],
    ['Battery at 12.6 volts.', 1, 3.5],
    ['Zzyqx.', 0.8, 5],
  ])('"%s" lasts as long as it takes to say, is loud enough and never past full scale', (text, least, most) => {
    const samples = sayToSamples(text, pack);
    const seconds = samples.length / SAMPLE_RATE;
    expect(seconds).toBeGreaterThan(least);
    expect(seconds).toBeLessThan(most);
    const peak = samples.reduce((highest, x) => Math.max(highest, Math.abs(x)), 0);
    const rms = Math.sqrt(samples.reduce((sum, x) => sum + x * x, 0) / samples.length);
    expect(peak).toBeLessThanOrEqual(1);
    expect(rms).toBeGreaterThan(0.05);
  });
});
