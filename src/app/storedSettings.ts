/** Settings as the flat values that the record and its export keep: `speech.rate` for a setting inside a group. */
import { parseSettings, type Settings } from '../domain/voice/settings.ts';
import type { StoredSettings } from '../record/record.ts';

type Flat = string | number | boolean | null;

export function toStored(settings: Settings): StoredSettings {
  const { speech, ...rest } = settings;
  const grouped = Object.entries(speech).map(([name, value]): [string, Flat] => [`speech.${name}`, value]);
  return Object.fromEntries([...Object.entries(rest), ...grouped]);
}

/** Whatever does not fit takes its default. */
export function fromStored(stored: StoredSettings | null): Settings {
  const speech: { [name: string]: Flat } = {};
  const rest: { [name: string]: Flat } = {};
  for (const [name, value] of Object.entries(stored ?? {})) {
    if (name.startsWith('speech.')) speech[name.slice('speech.'.length)] = value;
    else rest[name] = value;
  }
  return parseSettings({ ...rest, speech });
}
