/** Name of the packed voice beside the app; the service worker keeps it like the rest. */
export const VOICE_FILE = 'slt.voice';
