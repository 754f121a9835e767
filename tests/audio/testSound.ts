/** A sound with everything in it that the front end must treat alike: tones, a glide, noise, a pause. Always the same. */
import { normal, seeded } from './random.ts';

export function testSound(): Int16Array {
  const random = seeded(574);
  return Int16Array.from({ length: 8000 }, (_, n) => {
    const time = n / 16_000;
    const glide = Math.sin(2 * Math.PI * (200 * time + 3000 * time * time));
    const tone = 0.5 * Math.sin(2 * Math.PI * 1000 * time);
    const loud = n > 3000 && n < 4200 ? 0.01 : 1;
    return Math.round(loud * (6000 * glide + 3000 * tone + 400 * normal(random)));
  });
}
