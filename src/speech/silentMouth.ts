/** A mouth that says nothing: the words stay on the screen. For a device without any voice, and for those who want quiet. */
import type { Mouth } from '../domain/voice/ports.ts';

/** Long enough for the screen to show the line before the next thing happens, in milliseconds. */
export const SILENT_LINE_MS = 40;

export function createSilentMouth(): Mouth {
  return {
    id: 'silent',
    prepare: async () => ({ ready: true, voices: [] }),
    say: (_text, _settings, signal) =>
      new Promise((resolve) => {
        if (signal.aborted) {
          resolve('cancelled');
          return;
        }
        const timer = setTimeout(() => resolve('spoken'), SILENT_LINE_MS);
        signal.addEventListener(
          'abort',
          () => {
            clearTimeout(timer);
            resolve('cancelled');
          },
          { once: true },
        );
      }),
  };
}
