/** Puts the app together and shows it. */
import { opening, trouble } from './opening.ts';
import '../ui/style/style.css';
import { createRoot } from 'react-dom/client';
import type { Settings } from '../domain/voice/settings.ts';
import { createMemoryRecord } from '../record/memoryRecord.ts';
import type { Record } from '../record/record.ts';
import { RecordError } from '../record/recordError.ts';
import { App } from './App.tsx';
import { startAppUpdate } from './appUpdate.ts';
import { fastClock, newId, realClock } from './clock.ts';
import { watchInstallOffer } from './install.ts';
import { createStore } from './store.ts';
import { fromStored, toStored } from './storedSettings.ts';
import { createVoice } from './voice.ts';

const FASTEST = 120;

async function start(): Promise<void> {
  watchInstallOffer();
  let record: Record;
  try {
    record = await opening;
  } catch (error) {
    // A walk without a record is better than none, as long as it says so.
    trouble.set(
      `${error instanceof RecordError ? error.sentence : 'The browser refuses to keep anything.'} Nothing is kept until this is mended.`,
    );
    record = createMemoryRecord();
  }
  const settings = createStore<Settings>(fromStored(await record.settings().catch(() => null)));
  const saveSettings = (next: Settings) => {
    settings.set(next);
    record
      .putSettings(toStored(next))
      .catch((error: unknown) => trouble.set(error instanceof Error ? error.message : 'The settings could not be kept.'));
  };
  const parameters = new URLSearchParams(location.search);
  const asked = parameters.get('ears');
  // A faster clock for tests and demonstrations: ten minutes of furnace need not be waited for.
  const times = Number(parameters.get('clock'));
  const clock = times > 1 && times <= FASTEST ? fastClock(times) : realClock;
  const earsFromAddress = asked === 'scripted' || asked === 'off' ? asked : null;
  const voice = createVoice({
    settings,
    saveSettings,
    record,
    newId,
    earsFromAddress,
    silent: parameters.get('mouth') === 'silent',
  });
  const update = startAppUpdate(import.meta.env.PROD);
  const services = { record, settings, saveSettings, voice, update, clock, changes: createStore(0), trouble };
  const root = document.getElementById('app');
  if (!root) throw new Error('The page has no place for the app.');
  createRoot(root).render(<App services={services} />);
}

void start();
