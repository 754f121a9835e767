/** The audio thread: mixes the microphone to mono and hands it on in pieces. Nothing else happens here. */
declare class AudioWorkletProcessor {
  readonly port: { onmessage: ((event: { data: unknown }) => void) | null };
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

interface SoundPort {
  postMessage(message: unknown, transfer: unknown[]): void;
}

/** About 21 ms at 48 kHz: eight blocks. */
const PIECE = 1024;

class CaptureProcessor extends AudioWorkletProcessor {
  #out: SoundPort | null = null;
  #piece = new Float32Array(PIECE);
  #count = 0;

  constructor() {
    super();
    this.port.onmessage = ({ data }) => {
      this.#out = data as SoundPort | null;
    };
  }

  /** Called for each block of 128 frames. Returning true keeps the node alive while its input is silent. */
  process(inputs: readonly (readonly Float32Array[])[]): boolean {
    const channels = inputs[0];
    const first = channels?.[0];
    if (!this.#out || !channels || !first) return true;
    for (let n = 0; n < first.length; n += 1) {
      let sum = 0;
      for (const channel of channels) sum += channel[n] ?? 0;
      this.#piece[this.#count] = sum / channels.length;
      this.#count += 1;
      if (this.#count === PIECE) {
        this.#out.postMessage(this.#piece, [this.#piece.buffer]);
        this.#piece = new Float32Array(PIECE);
        this.#count = 0;
      }
    }
    return true;
  }
}

registerProcessor('capture', CaptureProcessor);
