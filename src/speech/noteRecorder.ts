/** A spoken note as a small compressed clip, by the browser's own encoder; null where it has none. */
import type { SoundClip } from './wavClip.ts';

const TYPES = ['audio/webm;codecs=opus', 'audio/mp4;codecs=opus', 'audio/mp4', 'audio/ogg;codecs=opus'];
/** Speech is clear at this, and a minute takes 180 kB. */
const BITS_PER_SECOND = 24_000;

export interface NoteRecorder {
  /** Stop and give what was recorded; null when it failed. Never rejects. */
  finish(): Promise<SoundClip | null>;
  cancel(): void;
}

export function recordNote(stream: MediaStream): NoteRecorder | null {
  if (typeof MediaRecorder === 'undefined') return null;
  const type = TYPES.find((candidate) => MediaRecorder.isTypeSupported(candidate));
  if (type === undefined) return null;
  let recorder: MediaRecorder;
  try {
    recorder = new MediaRecorder(stream, { mimeType: type, audioBitsPerSecond: BITS_PER_SECOND });
    recorder.start();
  } catch {
    return null;
  }
  const parts: Blob[] = [];
  recorder.ondataavailable = ({ data }) => parts.push(data);
  const stop = () => {
    if (recorder.state !== 'inactive') recorder.stop();
  };
  return {
    finish: () =>
      new Promise((resolve) => {
        const end = async () => {
          const blob = new Blob(parts, { type });
          resolve(blob.size > 0 ? { bytes: await blob.arrayBuffer(), type } : null);
        };
        recorder.onstop = () => void end();
        recorder.onerror = () => resolve(null);
        if (recorder.state === 'inactive') void end();
        else stop();
      }),
    cancel: stop,
  };
}
