/** Reads and writes WAV files for the tests and the command line: 16-bit and float PCM, any rate, mixed to mono. */
import { readFileSync, writeFileSync } from 'node:fs';

export interface Sound {
  readonly rate: number;
  /** -1 .. 1, mono. */
  readonly samples: Float32Array;
}

/** @throws Error naming the file when it is no WAV or in a form that is not read */
export function parseWav(bytes: Buffer, name = 'sound'): Sound {
  if (bytes.length < 44 || bytes.toString('latin1', 0, 4) !== 'RIFF' || bytes.toString('latin1', 8, 12) !== 'WAVE')
    throw new Error(`${name}: not a WAV file`);
  let at = 12;
  let format = 0;
  let channels = 1;
  let rate = 0;
  let bits = 16;
  while (at + 8 <= bytes.length) {
    const id = bytes.toString('latin1', at, at + 4);
    const size = Math.min(bytes.readUInt32LE(at + 4), bytes.length - at - 8);
    const body = at + 8;
    if (id === 'fmt ') {
      format = bytes.readUInt16LE(body);
      channels = Math.max(1, bytes.readUInt16LE(body + 2));
      rate = bytes.readUInt32LE(body + 4);
      bits = bytes.readUInt16LE(body + 14);
      if (format === 0xfffe && size >= 26) format = bytes.readUInt16LE(body + 24);
    } else if (id === 'data') {
      const width = bits / 8;
      const read: ((offset: number) => number) | undefined =
        format === 1 && bits === 16
          ? (offset) => bytes.readInt16LE(offset) / 32768
          : format === 1 && bits === 24
            ? (offset) => bytes.readIntLE(offset, 3) / 8_388_608
            : format === 1 && bits === 8
              ? (offset) => (bytes.readUInt8(offset) - 128) / 128
              : format === 3 && bits === 32
                ? (offset) => bytes.readFloatLE(offset)
                : undefined;
      if (!read || rate === 0) throw new Error(`${name}: cannot read format ${format} with ${bits} bits`);
      const samples = new Float32Array(Math.floor(size / (width * channels)));
      for (let n = 0; n < samples.length; n += 1) {
        let sum = 0;
        for (let channel = 0; channel < channels; channel += 1) sum += read(body + (n * channels + channel) * width);
        samples[n] = sum / channels;
      }
      return { rate, samples };
    }
    at = body + size + (size & 1);
  }
  throw new Error(`${name}: no sound in it`);
}

export function readWav(path: string): Sound {
  return parseWav(readFileSync(path), path);
}

/** 16-bit mono. */
export function writeWav(path: string, { rate, samples }: Sound): void {
  const bytes = Buffer.alloc(44 + 2 * samples.length);
  bytes.write('RIFF', 0, 'latin1');
  bytes.writeUInt32LE(36 + 2 * samples.length, 4);
  bytes.write('WAVEfmt ', 8, 'latin1');
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(1, 20);
  bytes.writeUInt16LE(1, 22);
  bytes.writeUInt32LE(rate, 24);
  bytes.writeUInt32LE(2 * rate, 28);
  bytes.writeUInt16LE(2, 32);
  bytes.writeUInt16LE(16, 34);
  bytes.write('data', 36, 'latin1');
  bytes.writeUInt32LE(2 * samples.length, 40);
  samples.forEach((sample, n) => {
    bytes.writeInt16LE(Math.max(-32768, Math.min(32767, Math.round(sample * 32768))), 44 + 2 * n);
  });
  writeFileSync(path, bytes);
}
