/** Settings, with the voice and the microphone to try. */
import { useEffect, useRef, useState } from 'react';
import type { EarsView } from '../../domain/round/view.ts';
import type { EarsEvent, ListenRequest } from '../../domain/voice/ports.ts';
import { SettingsScreen } from '../../ui/settings/SettingsScreen.tsx';
import { useStore } from '../store.ts';
import { useRecordData } from '../useRecordData.ts';
import type { ScreenProps } from './screenProps.ts';

const SAMPLE = 'Left front tire. What does the gauge read? Sixty-two. Three pounds under the placard.';

/** A number, as the round's most common question asks for one. */
const TRIAL: ListenRequest = {
  expects: {
    kind: 'reading',
    quantity: 'tire-pressure',
    unit: 'psi',
    otherUnits: [],
    min: 0,
    max: 150,
    step: 0.5,
    forms: ['whole', 'half'],
    usual: { min: 40, max: 90 },
  },
  position: null,
  positions: [],
  others: [],
  mode: 'answer',
};

interface Trial {
  readonly ears: EarsView;
  readonly heard: string | null;
}

export function SettingsPlace({ services, go }: ScreenProps) {
  const { voice, record } = services;
  const settings = useStore(services.settings);
  const voices = useRecordData(services, `voices ${settings.speech.mouth}`, () => voice.voicesOf(settings.speech.mouth));
  const mouths = useRecordData(services, 'mouths', () => voice.mouthsThatSpeak());
  const room = useRecordData(services, 'room', async () => ({
    room: await record.estimate(),
    clips: await record.clipBytesUsed(),
  }));
  const [trial, setTrial] = useState<Trial | null>(null);
  const stop = useRef<(() => void) | null>(null);
  useEffect(() => () => stop.current?.(), []);

  const testMicrophone = async (on: boolean) => {
    stop.current?.();
    stop.current = null;
    if (!on) return setTrial(null);
    const [ears] = voice.ears();
    const view = (state: EarsView['state'], sentence: string | null = null): EarsView => ({
      state,
      sentence,
      progress: null,
      provider: ears?.id ?? null,
    });
    if (!ears) return setTrial({ ears: view('off'), heard: null });
    setTrial({ ears: view('loading'), heard: null });
    const found = await ears.prepare((done) => setTrial({ ears: { ...view('loading'), progress: done }, heard: null }));
    if (found.kind === 'denied')
      return setTrial({ ears: view('denied', 'The microphone is not allowed. Allow it in the browser settings.'), heard: null });
    if (found.kind === 'unavailable') return setTrial({ ears: view('unavailable', found.sentence), heard: null });
    const onEvent = (event: EarsEvent) =>
      setTrial((now) => {
        const heard = now?.heard ?? null;
        switch (event.type) {
          case 'listening':
            return { ears: view('listening'), heard };
          case 'speech-started':
            return { ears: view('hearing'), heard };
          case 'partial':
            return { ears: view('hearing'), heard: event.transcript };
          case 'heard':
            return { ears: view('listening'), heard: event.hearing.hypotheses[0]?.transcript ?? heard };
          case 'not-understood':
            return { ears: view('listening', 'Something was said that is not a number. Try "sixty-two".'), heard };
          case 'sound':
            return { ears: view('listening', event.sentence), heard };
          case 'failed':
            return { ears: view('unavailable', event.sentence), heard };
        }
      });
    stop.current = ears.listen(TRIAL, onEvent);
  };

  const testVoice = async () => {
    await voice.unlock();
    const { mouth, settings: how } = voice.mouth();
    await mouth.say(SAMPLE, how, new AbortController().signal);
  };

  return (
    <SettingsScreen
      settings={settings}
      onChange={services.saveSettings}
      voices={voices.state === 'ready' ? voices.value : []}
      mouths={mouths.state === 'ready' ? mouths.value : []}
      ears={['built-in', 'browser']}
      onTestVoice={() => void testVoice()}
      onTestMicrophone={(on) => void testMicrophone(on)}
      microphone={trial}
      storage={room.state === 'ready' ? storageLine(room.value.room.usedBytes, room.value.room.quotaBytes, room.value.clips) : ''}
      onDeleteClips={() => void record.dropOldestClips(0).then(() => services.changes.update((count) => count + 1))}
      onBack={() => go({ at: 'home' })}
    />
  );
}

function storageLine(used: number | null, quota: number | null, clips: number): string {
  const megabytes = (bytes: number) => `${(bytes / 1e6).toFixed(bytes < 1e7 ? 1 : 0)} MB`;
  const all =
    used === null ? '' : quota === null ? `${megabytes(used)} used.` : `${megabytes(used)} of ${megabytes(quota)} used.`;
  return `${all} Clips of answers: ${megabytes(clips)}.`.trim();
}
