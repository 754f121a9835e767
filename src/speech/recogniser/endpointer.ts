/**
 * Finds where speech begins and ends from the level in the speech band against a tracked noise floor.
 *
 * The floor is the minimum of the smoothed level over the last while (minimum statistics, Martin 2001), so it follows steady
 * wind or an engine within that while and survives speech, which dips between syllables. Frames of 10 ms in, events out.
 */
export interface EndpointerOptions {
  /** dB above the floor at which a frame counts as speech. Raising it misses soft speech, lowering it wakes for gusts. */
  readonly onsetDb: number;
  /** Speech frames among the last {@link ONSET_WINDOW} that begin an utterance. */
  readonly onsetFrames: number;
  /** Frames without speech that end it: short for answers, patient for notes. */
  readonly endFrames: number;
  /** An utterance is cut off here. */
  readonly mostFrames: number;
}

export const ANSWER_ENDPOINTS: EndpointerOptions = { onsetDb: 6, onsetFrames: 7, endFrames: 56, mostFrames: 1200 };
export const NOTE_ENDPOINTS: EndpointerOptions = { onsetDb: 6, onsetFrames: 7, endFrames: 160, mostFrames: 6000 };

export const ONSET_WINDOW = 12;
const FLOOR_BLOCK = 10;
const FLOOR_BLOCKS = 20;
/** The minimum of a fluctuating level lies below its mean. */
const FLOOR_BIAS_DB = 2;
const SMOOTHING = 0.6;
/** Below this (dB, full scale 0) nothing is speech. */
const QUIETEST_DB = -62;

export type EndpointEvent = 'none' | 'started' | 'ended';

export class Endpointer {
  #options: EndpointerOptions;
  #smoothed = Number.NaN;
  readonly #blocks = new Float64Array(FLOOR_BLOCKS).fill(Infinity);
  #block = 0;
  #inBlock = 0;
  #recent = 0;
  #speaking = false;
  #quiet = 0;
  #frames = 0;

  constructor(options = ANSWER_ENDPOINTS) {
    this.#options = options;
  }

  /** Wait for a new utterance; what is known of the noise stays. */
  begin(options: EndpointerOptions): void {
    this.#options = options;
    this.#recent = 0;
    this.#speaking = false;
    this.#quiet = 0;
    this.#frames = 0;
  }

  /** dB, full scale 0. */
  get floorDb(): number {
    let floor = Infinity;
    for (const block of this.#blocks) if (block < floor) floor = block;
    return floor + FLOOR_BIAS_DB;
  }

  get isSpeaking(): boolean {
    return this.#speaking;
  }

  /** Frames without speech at the end of what was heard so far. */
  get quietFrames(): number {
    return this.#quiet;
  }

  /** @param levelDb level of one frame in the speech band, dB, full scale 0 */
  frame(levelDb: number): EndpointEvent {
    const level = Math.max(-120, levelDb);
    this.#smoothed = Number.isNaN(this.#smoothed) ? level : SMOOTHING * this.#smoothed + (1 - SMOOTHING) * level;
    if (this.#inBlock === 0) this.#blocks[this.#block] = this.#smoothed;
    else this.#blocks[this.#block] = Math.min(this.#blocks[this.#block] as number, this.#smoothed);
    this.#inBlock += 1;
    if (this.#inBlock === FLOOR_BLOCK) {
      this.#inBlock = 0;
      this.#block = (this.#block + 1) % FLOOR_BLOCKS;
    }
    const isSpeech = level > QUIETEST_DB && level > this.floorDb + this.#options.onsetDb;
    this.#recent = ((this.#recent << 1) | (isSpeech ? 1 : 0)) & ((1 << ONSET_WINDOW) - 1);
    if (!this.#speaking) {
      if (bitCount(this.#recent) < this.#options.onsetFrames) return 'none';
      this.#speaking = true;
      this.#quiet = 0;
      this.#frames = ONSET_WINDOW;
      return 'started';
    }
    this.#frames += 1;
    // One loud frame is a click, not a word that goes on.
    this.#quiet = bitCount(this.#recent & 0b111) >= 2 ? 0 : this.#quiet + 1;
    if (this.#quiet < this.#options.endFrames && this.#frames < this.#options.mostFrames) return 'none';
    this.#speaking = false;
    this.#recent = 0;
    return 'ended';
  }
}

function bitCount(bits: number): number {
  let count = 0;
  for (let rest = bits; rest !== 0; rest &= rest - 1) count += 1;
  return count;
}
