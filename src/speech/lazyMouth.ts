/** A mouth whose code is loaded when it is first needed: most devices have a voice of their own and never need it. */
import type { Mouth, MouthId } from '../domain/voice/ports.ts';

/** @param load a failed load counts as a mouth that cannot speak, and is tried again the next time */
export function createLazyMouth(id: MouthId, load: () => Promise<Mouth>): Mouth {
  let loading: Promise<Mouth> | null = null;
  const loaded = (): Promise<Mouth> => {
    loading ??= load();
    loading.catch(() => {
      loading = null;
    });
    return loading;
  };
  return {
    id,
    async prepare() {
      try {
        return await (await loaded()).prepare();
      } catch {
        return { ready: false, voices: [] };
      }
    },
    async say(text, settings, signal) {
      let mouth: Mouth;
      try {
        mouth = await loaded();
      } catch {
        return 'failed';
      }
      return signal.aborted ? 'cancelled' : mouth.say(text, settings, signal);
    },
  };
}
