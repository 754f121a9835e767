/**
 * Opening the record is begun before anything else of the app is evaluated: the browser works on it meanwhile, and the first words
 * come that much sooner on a slow phone. Import this before all the rest.
 */
import { openRecord } from '../record/openRecord.ts';
import type { RecordError } from '../record/recordError.ts';
import { createStore } from './store.ts';

/** A sentence that must be seen on every screen. */
export const trouble = createStore<string | null>(null);

const tell = (error: RecordError) => trouble.set(error.sentence);

export const opening = openRecord({ onBlocking: tell, onBlocked: tell, onTerminated: tell });
// Who awaits it hears of a failure; until then it is not an uncaught one.
opening.catch(() => undefined);
