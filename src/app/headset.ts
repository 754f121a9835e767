/**
 * The headset's button through Media Session. Browsers deliver it only while the page plays audible media, so a very quiet
 * loop is played for as long as a round runs.
 */
export type HeadsetPress = 'press' | 'next' | 'previous';

/** One second of near-silence (8-bit, 8 kHz, one step off centre), as a data-free blob: the CSP allows no data: media. */
function quietLoop(): Blob {
  const rate = 8000;
  const bytes = new Uint8Array(44 + rate).fill(128);
  const view = new DataView(bytes.buffer);
  const text = (at: number, value: string) => {
    for (let index = 0; index < value.length; index += 1) view.setUint8(at + index, value.charCodeAt(index));
  };
  text(0, 'RIFF');
  view.setUint32(4, 36 + rate, true);
  text(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, rate, true);
  view.setUint32(28, rate, true);
  view.setUint16(32, 1, true);
  view.setUint16(34, 8, true);
  text(36, 'data');
  view.setUint32(40, rate, true);
  for (let sample = 44; sample < bytes.length; sample += 2) bytes[sample] = 129;
  return new Blob([bytes], { type: 'audio/wav' });
}

/** @returns stop */
export function listenToHeadset(title: string, onPress: (press: HeadsetPress) => void): () => void {
  if (!('mediaSession' in navigator)) return () => {};
  const url = URL.createObjectURL(quietLoop());
  const loop = new Audio(url);
  loop.loop = true;
  void loop.play().catch(() => {
    // No sound device, or no gesture yet: the other ways of answering remain.
  });
  navigator.mediaSession.metadata = new MediaMetadata({ title });
  const actions: readonly (readonly [MediaSessionAction, HeadsetPress])[] = [
    ['play', 'press'],
    ['pause', 'press'],
    ['nexttrack', 'next'],
    ['previoustrack', 'previous'],
  ];
  for (const [action, press] of actions) {
    try {
      navigator.mediaSession.setActionHandler(action, () => {
        onPress(press);
        // "Pause" stops the loop and with it further presses.
        void loop.play().catch(() => {});
      });
    } catch {
      // A browser that does not know the action.
    }
  }
  return () => {
    for (const [action] of actions) {
      try {
        navigator.mediaSession.setActionHandler(action, null);
      } catch {
        // Never set.
      }
    }
    loop.pause();
    URL.revokeObjectURL(url);
  };
}
