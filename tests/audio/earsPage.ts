/** Builds the bare listening page as the app is built, serves it with the app's policy, and opens it with a file for a microphone. */
import { readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { extname, join, normalize } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { build } from 'vite';
import { CHROMIUM_FLAGS, findChromium } from '../tools/chromium.ts';

const OUT = 'node_modules/.cache/ears/page';
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.bin': 'application/octet-stream',
  '.txt': 'text/plain',
};
const POLICY = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'; worker-src 'self'; img-src data:";

export async function buildEarsPage(): Promise<void> {
  await build({
    root: 'tests/audio/page',
    configFile: false,
    publicDir: join(process.cwd(), 'public'),
    logLevel: 'error',
    worker: { format: 'es' },
    build: { outDir: join(process.cwd(), OUT), emptyOutDir: true, target: 'es2022', assetsInlineLimit: 0 },
  });
}

export interface Served {
  readonly url: string;
  readonly server: Server;
  /** What to give instead of a file: damaged bytes, or null for "not there". */
  readonly instead: Map<string, Buffer | null>;
}

export async function serveEarsPage(): Promise<Served> {
  const instead = new Map<string, Buffer | null>();
  const server = createServer((request, response) => {
    const path = normalize(new URL(request.url ?? '/', 'http://localhost').pathname);
    const file = path === '/' ? '/index.html' : path;
    try {
      const bytes = instead.has(file) ? instead.get(file) : readFileSync(join(OUT, file));
      if (!bytes) throw new Error('not there');
      response.writeHead(200, {
        'Content-Type': TYPES[extname(file)] ?? 'application/octet-stream',
        'Content-Security-Policy': POLICY,
      });
      response.end(bytes);
    } catch {
      response.writeHead(404);
      response.end();
    }
  });
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve);
  });
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('no address');
  return { url: `http://localhost:${address.port}/`, server, instead };
}

export interface OpenedPage {
  readonly browser: Browser;
  readonly page: Page;
  readonly errors: readonly string[];
}

/** @param sound 16-bit WAV that ends in silence; null: permission is refused */
export async function openEarsPage(url: string, sound: string | null): Promise<OpenedPage> {
  const executablePath = findChromium();
  if (!executablePath) throw new Error('no Chromium');
  const browser = await chromium.launch({
    executablePath,
    headless: true,
    args: [
      ...CHROMIUM_FLAGS,
      ...(sound === null
        ? []
        : [
            '--use-fake-ui-for-media-stream',
            '--use-fake-device-for-media-stream',
            `--use-file-for-fake-audio-capture=${sound}%noloop`,
          ]),
    ],
  });
  const context = await browser.newContext(sound === null ? { permissions: [] } : { permissions: ['microphone'] });
  const page = await context.newPage();
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  await page.goto(url);
  return { browser, page, errors };
}
