/** Finds a Chrome or Chromium on this computer. */
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];
const PLACES = [
  '/usr/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
];

/** @returns the path, or null; the environment variable CHROMIUM comes first */
export function findChromium(): string | null {
  const candidates = [
    process.env.CHROMIUM ?? '',
    ...PLACES,
    ...(process.env.PATH ?? '').split(delimiter).flatMap((folder) => NAMES.map((name) => join(folder, name))),
  ];
  return candidates.find((path) => path !== '' && existsSync(path)) ?? null;
}

/** Flags for a quiet, sealed browser: no background traffic, no first-run pages. */
export const CHROMIUM_FLAGS: readonly string[] = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
