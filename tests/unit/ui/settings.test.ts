import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS, parseSettings } from '../../../src/domain/voice/settings.ts';

describe('parseSettings', () => {
  it('reads back what was kept', () => {
    const kept = {
      ...DEFAULT_SETTINGS,
      display: 'metric' as const,
      theme: 'sun' as const,
      speech: { mouth: 'silent' as const, voice: 'a voice', rate: 1.25, volume: 0.4 },
      ears: 'off' as const,
      elevationM: 396,
    };
    expect(parseSettings(JSON.parse(JSON.stringify(kept)))).toEqual(kept);
  });

  it('keeps the good settings beside a bad one', () => {
    expect(parseSettings({ display: 'metric', theme: 'neon', speech: { rate: 9, volume: 0.5 } })).toEqual({
      ...DEFAULT_SETTINGS,
      display: 'metric',
      speech: { ...DEFAULT_SETTINGS.speech, volume: 0.5 },
    });
  });

  it.each([null, undefined, 'text', 3, [], { speech: null }, { clipCapMb: Number.NaN }, { elevationM: 'high' }])(
    'falls back to the defaults for %j',
    (stored) => {
      expect(parseSettings(stored)).toEqual(DEFAULT_SETTINGS);
    },
  );

  it('makes usable settings out of anything, and reads its own output unchanged', () => {
    fc.assert(
      fc.property(fc.anything(), (stored) => {
        const settings = parseSettings(stored);
        expect(Number.isFinite(settings.speech.rate)).toBe(true);
        expect(parseSettings(settings)).toEqual(settings);
      }),
    );
  });
});
