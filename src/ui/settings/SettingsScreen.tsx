/** What a person may set. Every change counts at once; there is nothing to save. */
import { type ReactNode, useId, useState } from 'react';
import { fromSI, toSI } from '../../domain/quantity/units.ts';
import type { EarsView } from '../../domain/round/view.ts';
import { CLIP_CAP_RANGE_MB, ELEVATION_RANGE_M, RATE_RANGE, type Settings } from '../../domain/voice/settings.ts';
import { EarsMark } from '../parts/EarsMark.tsx';

export interface VoiceOption {
  readonly id: string;
  readonly name: string;
  /** Speaks with the network off. */
  readonly local: boolean;
}

export interface SettingsScreenProps {
  readonly settings: Settings;
  readonly onChange: (settings: Settings) => void;
  /** Voices of the chosen mouth; empty while they load or when there are none. */
  readonly voices: readonly VoiceOption[];
  /** Mouths and ears that exist here, beside `silent` and `off`. */
  readonly mouths: readonly ('browser' | 'bundled')[];
  readonly ears: readonly ('built-in' | 'browser')[];
  readonly onTestVoice: () => void;
  /** Started or stopped by the same button. */
  readonly onTestMicrophone: (on: boolean) => void;
  /** What the test hears; null while no test runs. */
  readonly microphone: { readonly ears: EarsView; readonly heard: string | null } | null;
  /** "12 rounds and 40 clips, 38 MB of 2 GB; kept until you delete them." */
  readonly storage: string;
  readonly onDeleteClips?: () => void;
  readonly onBack: () => void;
}

export function SettingsScreen(props: SettingsScreenProps) {
  const { settings, onChange, voices, mouths, ears, microphone, storage } = props;
  const set = (change: Partial<Settings>) => onChange({ ...settings, ...change });
  const speak = (change: Partial<Settings['speech']>) => set({ speech: { ...settings.speech, ...change } });
  return (
    <main className="page settings">
      <header>
        <h1>Settings</h1>
      </header>
      <Group title="Screen">
        <Radios
          legend="Figures"
          value={settings.display}
          options={[
            ['us', 'psi, lb-ft, °F'],
            ['metric', 'kPa, N·m, °C'],
          ]}
          onPick={(display) => set({ display })}
        />
        <Radios
          legend="Look"
          value={settings.theme}
          options={[
            ['auto', 'As the device'],
            ['light', 'Light'],
            ['dark', 'Dark'],
            ['sun', 'Bright sun'],
          ]}
          onPick={(theme) => set({ theme })}
        />
      </Group>
      <Group title="Its voice">
        <Radios
          legend="Speaks with"
          value={settings.speech.mouth}
          options={[
            ...mouths.map((mouth) => [mouth, mouth === 'browser' ? "The device's voice" : 'Its own voice'] as const),
            ['silent', 'No voice, text only'],
          ]}
          onPick={(mouth) => speak({ mouth, voice: null })}
        />
        {settings.speech.mouth !== 'silent' && (
          <>
            {voices.length > 0 && (
              <Labeled label="Voice">
                {(id) => (
                  <select
                    id={id}
                    value={settings.speech.voice ?? ''}
                    onChange={(event) => speak({ voice: event.target.value === '' ? null : event.target.value })}
                  >
                    <option value="">Its own choice</option>
                    {voices.map((voice) => (
                      <option key={voice.id} value={voice.id}>
                        {voice.name}
                        {voice.local ? '' : ' (needs the network)'}
                      </option>
                    ))}
                  </select>
                )}
              </Labeled>
            )}
            <Stepper
              label="Speed"
              shown={`${settings.speech.rate.toFixed(1)} times`}
              onDown={() => speak({ rate: stepped(settings.speech.rate, -0.1, RATE_RANGE) })}
              onUp={() => speak({ rate: stepped(settings.speech.rate, 0.1, RATE_RANGE) })}
              down="Slower"
              up="Faster"
            />
            <Stepper
              label="Loudness"
              shown={`${Math.round(settings.speech.volume * 100)} %`}
              onDown={() => speak({ volume: stepped(settings.speech.volume, -0.1, { min: 0, max: 1 }) })}
              onUp={() => speak({ volume: stepped(settings.speech.volume, 0.1, { min: 0, max: 1 }) })}
              down="Quieter"
              up="Louder"
            />
            <button type="button" className="slab alone" onClick={props.onTestVoice}>
              Say something
            </button>
          </>
        )}
        <Radios
          legend="How much it says"
          value={settings.style}
          options={[
            ['full', 'Everything'],
            ['terse', 'Few words'],
            ['adaptive', 'Fewer as you get used to it'],
          ]}
          onPick={(style) => set({ style })}
        />
      </Group>
      <Group title="Its ears">
        <Radios
          legend="Listens with"
          value={settings.ears}
          options={[
            ['auto', 'The best there is'],
            ...ears.map((id) => [id, id === 'built-in' ? 'The built-in ears, no network' : "The browser's ears"] as const),
            ['off', 'No microphone, buttons only'],
          ]}
          onPick={(choice) => set({ ears: choice })}
        />
        {settings.ears === 'browser' && (
          <p className="quiet">Some browsers send what they hear to their maker to understand it. The built-in ears never do.</p>
        )}
        {settings.ears !== 'off' && (
          <div className="mic-test">
            <button type="button" className="slab alone" onClick={() => props.onTestMicrophone(microphone === null)}>
              {microphone === null ? 'Test the microphone' : 'Stop the test'}
            </button>
            <div aria-live="polite">
              {microphone !== null && (
                <>
                  <EarsMark ears={microphone.ears} />
                  <p>
                    {microphone.ears.sentence ??
                      (microphone.heard === null ? 'Say “sixty-two”.' : `Heard: “${microphone.heard}”`)}
                  </p>
                </>
              )}
            </div>
          </div>
        )}
        {settings.ears !== 'off' && settings.ears !== 'browser' && (
          <Switch
            label="Keep the microphone open between answers"
            help="Turn it off if your headset sounds like a telephone during a round."
            on={settings.keepMicrophone}
            onFlip={(keepMicrophone) => set({ keepMicrophone })}
          />
        )}
        <Switch
          label="Keep the sound of each answer"
          help="On this device only, so that a doubtful answer can be heard again."
          on={settings.keepClips}
          onFlip={(keepClips) => set({ keepClips })}
        />
        {settings.keepClips && (
          <Stepper
            label="Room for sound"
            shown={`${settings.clipCapMb} MB`}
            onDown={() => set({ clipCapMb: stepped(settings.clipCapMb, -50, CLIP_CAP_RANGE_MB) })}
            onUp={() => set({ clipCapMb: stepped(settings.clipCapMb, 50, CLIP_CAP_RANGE_MB) })}
            down="Less"
            up="More"
          />
        )}
      </Group>
      <Group title="Signals">
        <Switch
          label="Short sounds"
          help="When it listens, has heard, is not sure, and when something is due."
          on={settings.cues}
          onFlip={(cues) => set({ cues })}
        />
        <Switch
          label="Vibration"
          help="Where the device has it. Not to be relied on in gloves."
          on={settings.vibration}
          onFlip={(vibration) => set({ vibration })}
        />
      </Group>
      <Group title="Where you are">
        <Elevation settings={settings} onChange={(elevationM) => set({ elevationM })} />
      </Group>
      <Group title="On this device">
        <p>{storage}</p>
        {props.onDeleteClips && (
          <button type="button" className="slab alone" onClick={props.onDeleteClips}>
            Delete all kept sound
          </button>
        )}
      </Group>
      <div className="form-foot">
        <button type="button" className="slab" onClick={props.onBack}>
          Home
        </button>
      </div>
    </main>
  );
}

/** One step on, held within its range and free of binary dust. */
export function stepped(value: number, by: number, range: { readonly min: number; readonly max: number }): number {
  return Number(Math.min(range.max, Math.max(range.min, value + by)).toFixed(3));
}

function Group({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  const id = useId();
  return (
    <section className="form-section" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {children}
    </section>
  );
}

interface RadiosProps<T extends string> {
  readonly legend: string;
  readonly value: T;
  readonly options: readonly (readonly [value: T, label: string])[];
  readonly onPick: (value: T) => void;
}

function Radios<T extends string>({ legend, value, options, onPick }: RadiosProps<T>) {
  const name = useId();
  return (
    <fieldset className="field">
      <legend>{legend}</legend>
      <div className="radio-row">
        {options.map(([option, label]) => (
          <label key={option} className="slab radio">
            <input type="radio" name={name} checked={option === value} onChange={() => onPick(option)} />
            <span>{label}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

function Labeled({ label, children }: { readonly label: string; readonly children: (id: string) => ReactNode }) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <div className="field-entry">{children(id)}</div>
    </div>
  );
}

interface StepperProps {
  readonly label: string;
  readonly shown: string;
  readonly down: string;
  readonly up: string;
  readonly onDown: () => void;
  readonly onUp: () => void;
}

function Stepper({ label, shown, down, up, onDown, onUp }: StepperProps) {
  return (
    <fieldset className="field">
      <legend>{label}</legend>
      <div className="stepper">
        <button type="button" className="slab" onClick={onDown}>
          {down}
        </button>
        <output>{shown}</output>
        <button type="button" className="slab" onClick={onUp}>
          {up}
        </button>
      </div>
    </fieldset>
  );
}

interface SwitchProps {
  readonly label: string;
  readonly help: string;
  readonly on: boolean;
  readonly onFlip: (on: boolean) => void;
}

function Switch({ label, help, on, onFlip }: SwitchProps) {
  const id = useId();
  return (
    <div className="switch">
      <label className="slab radio">
        <input type="checkbox" checked={on} aria-describedby={id} onChange={() => onFlip(!on)} />
        <span>{label}</span>
      </label>
      <p id={id} className="field-help">
        {help}
      </p>
    </div>
  );
}

/** Typed in the person's unit, kept in metres; what does not fit is said and not kept. */
function Elevation({ settings, onChange }: { readonly settings: Settings; readonly onChange: (m: number | null) => void }) {
  const unit = settings.display === 'us' ? 'ft' : 'm';
  const [text, setText] = useState<string | null>(null);
  const id = useId();
  const shown = settings.elevationM === null ? '' : String(Math.round(fromSI(settings.elevationM, unit)));
  const range = [ELEVATION_RANGE_M.min, ELEVATION_RANGE_M.max].map((m) => Math.round(fromSI(m, unit)));
  const read = (typed: string): number | null => {
    const value = /^[+-]?\d+([.,]\d+)?$/.test(typed.trim()) ? toSI(Number(typed.trim().replace(',', '.')), unit) : Number.NaN;
    return value >= ELEVATION_RANGE_M.min && value <= ELEVATION_RANGE_M.max ? value : null;
  };
  const wrong = text !== null && text.trim() !== '' && read(text) === null;
  return (
    <div className="field">
      <label htmlFor={id}>Height above the sea</label>
      <p id={`${id}-help`} className="field-help">
        Thinner air changes what a tire gauge means. Leave it empty if you do not know: then the unit's own home counts.
      </p>
      <div className="field-entry">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          value={text ?? shown}
          placeholder="Not known"
          aria-describedby={`${id}-help`}
          aria-invalid={wrong || undefined}
          onChange={(event) => {
            const typed = event.target.value;
            setText(typed);
            if (typed.trim() === '') onChange(null);
            else {
              const metres = read(typed);
              if (metres !== null) onChange(metres);
            }
          }}
          onBlur={() => {
            if (!wrong) setText(null);
          }}
        />
        <span className="field-unit">{unit}</span>
      </div>
      {wrong && (
        <p className="field-said wrong" role="alert">
          Between {range[0]} and {range[1]} {unit}. It is not changed yet.
        </p>
      )}
    </div>
  );
}
