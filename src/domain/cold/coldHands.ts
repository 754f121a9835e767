/** One sentence at the start of a round, for the minutes with the gloves off. */
import { COLD } from '../judge/numbers/cold.ts';
import { speakQuantity } from '../quantity/format.ts';
import { numberInWords } from '../quantity/words.ts';
import { frostbiteMinutes, windChill } from './windChill.ts';

export interface ColdHands {
  readonly temperatureK: number | null;
  /** Null: not known, still air is taken and said. */
  readonly windMps: number | null;
  readonly display: 'us' | 'metric';
}

/** Air temperatures on Earth, K; anything else was misheard. */
const COLDEST_K = 180;
const WARMEST_K = 335;

/** @returns the sentence, or null where there is nothing to say: not cold, or the temperature is not known */
export function coldHandsSentence({ temperatureK, windMps, display }: ColdHands): string | null {
  if (temperatureK === null || !(temperatureK >= COLDEST_K && temperatureK <= WARMEST_K)) return null;
  const wind = windMps !== null && Number.isFinite(windMps) && windMps >= 0 ? windMps : 0;
  const chill = windChill(temperatureK, wind);
  const felt = chill ?? temperatureK;
  if (felt >= COLD.speak.si) return null;
  const minutes = frostbiteMinutes(temperatureK, wind);
  const feels = chill === null ? '' : `With the wind it feels like ${speakQuantity(felt, 'F', display)}. `;
  if (minutes === null) return `${feels}Keep the gloves on between readings.`;
  const whole = Math.floor(minutes);
  const time = whole <= 1 ? 'a minute or two' : `${numberInWords(whole)} minutes`;
  const guess = windMps === null ? ', sooner in wind' : '';
  return `${feels}Bare skin can freeze in ${time}${guess}. Gloves off only for the gauge.`;
}
