/** A real Chromium with a profile of its own, and the pages under test in it. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { CHROMIUM_FLAGS, findChromium } from '../../tools/chromium.ts';

export const PHONE = { width: 390, height: 844 } as const;
export const DESKTOP = { width: 1280, height: 800 } as const;

export interface OpenOptions {
  readonly profile?: string;
  readonly viewport?: { width: number; height: number };
  readonly colorScheme?: 'light' | 'dark';
  readonly permissions?: readonly string[];
  readonly flags?: readonly string[];
}

export function freshProfile(): string {
  return mkdtempSync(join(tmpdir(), 'gloveside-profile-'));
}

export function dropProfile(profile: string): void {
  rmSync(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
}

/** A persistent context: storage is on disk, so that a killed browser can be opened again. */
export async function openBrowser(options: OpenOptions = {}): Promise<BrowserContext> {
  const executablePath = findChromium();
  if (executablePath === null) throw new Error('No Chromium on this computer');
  return chromium.launchPersistentContext(options.profile ?? freshProfile(), {
    executablePath,
    headless: true,
    args: [...CHROMIUM_FLAGS, ...(options.flags ?? [])],
    viewport: options.viewport ?? PHONE,
    colorScheme: options.colorScheme ?? 'light',
    permissions: [...(options.permissions ?? [])],
    reducedMotion: 'reduce',
  });
}

/** A page that fails its test on any uncaught error, Content-Security-Policy breach or request that leaves the origin. */
export async function openPage(context: BrowserContext, origin: string): Promise<{ page: Page; troubles: string[] }> {
  const page = context.pages()[0] ?? (await context.newPage());
  const troubles: string[] = [];
  page.on('pageerror', (error) => troubles.push(`uncaught: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error') troubles.push(`console: ${message.text()}`);
  });
  page.on('request', (request) => {
    const url = new URL(request.url());
    if (url.protocol.startsWith('http') && url.origin !== origin) troubles.push(`left the device: ${url.href}`);
  });
  return { page, troubles };
}
