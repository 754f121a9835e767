/** Sound as a WAV file: plays in every browser. */
export interface SoundClip {
  readonly bytes: ArrayBuffer;
  readonly type: string;
}

/** @param samples 16 bit mono */
export function wavClip(samples: Int16Array, rate: number): SoundClip {
  const bytes = new ArrayBuffer(44 + 2 * samples.length);
  const view = new DataView(bytes);
  const text = (at: number, value: string) => {
    for (let index = 0; index < value.length; index += 1) view.setUint8(at + index, value.charCodeAt(index));
  };
  text(0, 'RIFF');
  view.setUint32(4, 36 + 2 * samples.length, true);
  text(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, rate, true);
  view.setUint32(28, 2 * rate, true);
  view.setUint16(32, 2, true);
  view.setUint16(34, 16, true);
  text(36, 'data');
  view.setUint32(40, 2 * samples.length, true);
  for (const [index, sample] of samples.entries()) view.setInt16(44 + 2 * index, sample, true);
  return { bytes, type: 'audio/wav' };
}
