/** Mono 16-bit PCM WAV files (Multimedia Programming Interface and Data Specifications 1.0, IBM and Microsoft, 1991). */

/** @returns samples, full scale 1. @throws Error for anything but mono 16-bit PCM. */
export function readWav(file: Buffer): Float32Array {
  let at = 12;
  while (file.toString('latin1', at, at + 4) !== 'data') {
    if (
      file.toString('latin1', at, at + 4) === 'fmt ' &&
      (file.readUInt16LE(at + 10) !== 1 || file.readUInt16LE(at + 22) !== 16)
    ) {
      throw new Error('readWav requires mono 16-bit samples');
    }
    at += 8 + file.readUInt32LE(at + 4);
    if (at + 8 > file.length) throw new Error('readWav found no samples');
  }
  const count = Math.floor(Math.min(file.readUInt32LE(at + 4), file.length - at - 8) / 2);
  return Float32Array.from({ length: count }, (_, i) => file.readInt16LE(at + 8 + 2 * i) / 32_768);
}

/** @param samples full scale 1; louder ones are clipped */
export function writeWav(samples: Float32Array, sampleRate: number): Buffer {
  const file = Buffer.alloc(44 + 2 * samples.length);
  file.write('RIFF', 0, 'latin1');
  file.writeUInt32LE(36 + 2 * samples.length, 4);
  file.write('WAVEfmt ', 8, 'latin1');
  file.writeUInt32LE(16, 16);
  file.writeUInt16LE(1, 20);
  file.writeUInt16LE(1, 22);
  file.writeUInt32LE(sampleRate, 24);
  file.writeUInt32LE(2 * sampleRate, 28);
  file.writeUInt16LE(2, 32);
  file.writeUInt16LE(16, 34);
  file.write('data', 36, 'latin1');
  file.writeUInt32LE(2 * samples.length, 40);
  samples.forEach((sample, i) => {
    file.writeInt16LE(Math.max(-32_768, Math.min(32_767, Math.round(sample * 32_767))), 44 + 2 * i);
  });
  return file;
}
