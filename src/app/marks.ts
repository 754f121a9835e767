/** Moments that a measurement reads from the page's own timeline. */

/** The first words of a visit are handed to the mouth. */
export const FIRST_WORDS = 'first words';
