/** A bare page that only listens: the test clicks, speaks through the fake microphone, and reads what was heard. */
import type { EarsEvent, EarsState, ListenRequest } from '../../../src/domain/voice/ports.ts';
import { createBuiltInEars } from '../../../src/speech/builtInEars.ts';

interface EarsPage {
  request: ListenRequest | null;
  state: EarsState | null;
  progress: number[];
  events: { at: number; event: EarsEvent }[];
  clips: { bytes: number; type: string }[];
  stop: () => void;
  close: () => void;
}

declare global {
  interface Window {
    ears: EarsPage;
  }
}

const page: EarsPage = { request: null, state: null, progress: [], events: [], clips: [], stop: () => {}, close: () => {} };
window.ears = page;
const parameters = new URLSearchParams(location.search);
const ears = createBuiltInEars({
  modelUrl: parameters.get('model') ?? '/ears/',
  keepClip: async ({ bytes, type }) => {
    page.clips.push({ bytes: bytes.byteLength, type });
    return `clip-${page.clips.length}`;
  },
  keepsMicrophone: () => parameters.get('hold') !== 'turn',
});
page.close = () => ears.close();

document.querySelector('#listen')?.addEventListener('click', async () => {
  page.state ??= await ears.prepare((done) => page.progress.push(done));
  if (page.state.kind !== 'ready' || !page.request) return;
  page.stop = ears.listen(page.request, (event) => page.events.push({ at: performance.now(), event }));
});
