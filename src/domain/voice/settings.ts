/**
 * What a person may set. Kept as plain data on the device; read back through {@link parseSettings}, so that an old, a newer
 * or a damaged copy never stops the app: whatever does not fit falls back to its default, one setting at a time.
 */
import * as v from 'valibot';
import type { EarsId, MouthId } from './ports.ts';

export type Display = 'us' | 'metric';
/** `auto` follows the device; `sun` is black on white with heavier type. */
export type Theme = 'auto' | 'light' | 'dark' | 'sun';
/** `adaptive`: in full until a check was answered a few times, then few words. */
export type SpeakingStyle = 'full' | 'terse' | 'adaptive';
/** `auto`: the built-in recogniser first, then the browser's. `off`: buttons and keys only. */
export type EarsChoice = 'auto' | Exclude<EarsId, 'scripted'> | 'off';

export interface Settings {
  readonly display: Display;
  readonly theme: Theme;
  readonly speech: {
    readonly mouth: MouthId;
    /** Id of a voice of that mouth; null: its own choice. */
    readonly voice: string | null;
    /** 0.5 .. 2; 1 is normal. */
    readonly rate: number;
    /** 0 .. 1. */
    readonly volume: number;
  };
  readonly style: SpeakingStyle;
  readonly ears: EarsChoice;
  /** Our ears keep the microphone between answers. Some headsets sound like a telephone for as long as it is open. */
  readonly keepMicrophone: boolean;
  /** Keep the sound of each answer, on the device only. */
  readonly keepClips: boolean;
  /** Megabytes (10^6 bytes); the oldest clips go first. */
  readonly clipCapMb: number;
  /** Short sounds for listening, heard, not sure, wrong, due. */
  readonly cues: boolean;
  readonly vibration: boolean;
  /** Metres above sea level where rounds are usually made; null: not known, then the unit's own. */
  readonly elevationM: number | null;
}

export const RATE_RANGE = { min: 0.5, max: 2 } as const;
export const CLIP_CAP_RANGE_MB = { min: 10, max: 2000 } as const;
/** Dead Sea shore to above the highest road passes. */
export const ELEVATION_RANGE_M = { min: -430, max: 6000 } as const;

export const DEFAULT_SETTINGS: Settings = {
  display: 'us',
  theme: 'auto',
  speech: { mouth: 'browser', voice: null, rate: 1, volume: 1 },
  style: 'adaptive',
  ears: 'auto',
  keepMicrophone: true,
  keepClips: true,
  clipCapMb: 200,
  cues: true,
  vibration: true,
  elevationM: null,
};

const within = (range: { readonly min: number; readonly max: number }) =>
  v.pipe(v.number(), v.finite(), v.minValue(range.min), v.maxValue(range.max));

const speechSchema = v.object({
  mouth: v.fallback(v.picklist(['browser', 'bundled', 'silent']), DEFAULT_SETTINGS.speech.mouth),
  voice: v.fallback(v.nullable(v.string()), DEFAULT_SETTINGS.speech.voice),
  rate: v.fallback(within(RATE_RANGE), DEFAULT_SETTINGS.speech.rate),
  volume: v.fallback(within({ min: 0, max: 1 }), DEFAULT_SETTINGS.speech.volume),
});

const settingsSchema = v.object({
  display: v.fallback(v.picklist(['us', 'metric']), DEFAULT_SETTINGS.display),
  theme: v.fallback(v.picklist(['auto', 'light', 'dark', 'sun']), DEFAULT_SETTINGS.theme),
  speech: v.fallback(speechSchema, DEFAULT_SETTINGS.speech),
  style: v.fallback(v.picklist(['full', 'terse', 'adaptive']), DEFAULT_SETTINGS.style),
  ears: v.fallback(v.picklist(['auto', 'built-in', 'browser', 'off']), DEFAULT_SETTINGS.ears),
  keepMicrophone: v.fallback(v.boolean(), DEFAULT_SETTINGS.keepMicrophone),
  keepClips: v.fallback(v.boolean(), DEFAULT_SETTINGS.keepClips),
  clipCapMb: v.fallback(within(CLIP_CAP_RANGE_MB), DEFAULT_SETTINGS.clipCapMb),
  cues: v.fallback(v.boolean(), DEFAULT_SETTINGS.cues),
  vibration: v.fallback(v.boolean(), DEFAULT_SETTINGS.vibration),
  elevationM: v.fallback(v.nullable(within(ELEVATION_RANGE_M)), DEFAULT_SETTINGS.elevationM),
});

/**
 * Settings from anything that was stored.
 * Each setting that is missing, of another type or out of its range takes its default; unknown ones are dropped. Never throws.
 */
export function parseSettings(stored: unknown): Settings {
  const parsed = v.safeParse(settingsSchema, stored);
  return parsed.success ? parsed.output : DEFAULT_SETTINGS;
}
