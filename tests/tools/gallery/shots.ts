/**
 * Looks at every scene of the gallery in Chromium: pictures, axe-core, target sizes and measured contrast.
 *
 *   npx tsx tests/tools/gallery/shots.ts [folder] [scene …]
 *
 * Prints each breach and exits 1 when there is one. On the round every target is at least 96 CSS px both ways with 16 px
 * between neighbors, and every text has at least 7:1.
 */
import { mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { createServer } from 'vite';
import type { Measured } from './measure.ts';

const [folder = '/tmp/gallery', ...only] = process.argv.slice(2);
const VIEWS = [
  { name: 'phone', width: 390, height: 844, themes: ['light', 'dark', 'sun', 'forced'] },
  { name: 'desk', width: 1280, height: 800, themes: ['light', 'dark'] },
  { name: 'small', width: 360, height: 640, themes: ['light'] },
] as const;
const CHROMIUM_ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
mkdirSync(folder, { recursive: true });

const server = await createServer({ configFile: join(import.meta.dirname, 'vite.config.ts'), logLevel: 'error' });
await server.listen(0);
const address = server.resolvedUrls?.local[0];
if (!address) throw new Error('the gallery has no address');
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: CHROMIUM_ARGS,
});

interface SceneInfo {
  readonly name: string;
  readonly strict: boolean;
  readonly press?: readonly string[];
}

let failures = 0;
let lowest = Number.POSITIVE_INFINITY;
let smallest = Number.POSITIVE_INFINITY;
try {
  for (const view of VIEWS) {
    for (const theme of view.themes) {
      const context = await browser.newContext({
        viewport: { width: view.width, height: view.height },
        colorScheme: theme === 'dark' ? 'dark' : 'light',
        reducedMotion: 'reduce',
        forcedColors: theme === 'forced' ? 'active' : 'none',
      });
      const page = await context.newPage();
      page.on('pageerror', (error) => {
        failures += 1;
        console.error(`page error: ${error.message}`);
      });
      await page.goto(`${address}${theme === 'sun' ? '?theme=sun' : ''}`);
      await page.addScriptTag({ content: axeSource });
      const scenes = await page.evaluate<readonly SceneInfo[]>(
        "import('./scenes.tsx').then(({ SCENES }) => SCENES.map(({ name, strict, press }) => ({ name, strict, press })))",
      );
      for (const scene of scenes) {
        if (only.length > 0 && !only.includes(scene.name)) continue;
        await show(page, scene);
        const label = `${scene.name} ${view.name} ${theme}`;
        await page.screenshot({ path: join(folder, `${scene.name}-${view.name}-${theme}.png`), fullPage: true });
        const { breaches, lowestContrast, smallestTarget } = await measure(page, scene.strict);
        for (const breach of [...(await axe(page, theme !== 'forced')), ...breaches]) {
          failures += 1;
          console.error(`${label}: ${breach}`);
        }
        if (scene.strict) {
          lowest = Math.min(lowest, lowestContrast);
          smallest = Math.min(smallest, smallestTarget);
        }
      }
      await context.close();
    }
  }
} finally {
  await browser.close();
  await server.close();
}
console.log(
  `round: lowest contrast ${lowest.toFixed(1)}:1, smallest target ${smallest.toFixed(0)} px; ${failures} ${failures === 1 ? 'breach' : 'breaches'}`,
);
process.exit(failures === 0 ? 0 : 1);

async function show(page: Page, scene: SceneInfo): Promise<void> {
  await page.evaluate((name) => {
    location.hash = '';
    location.hash = name;
  }, scene.name);
  await page.waitForSelector('main');
  for (const selector of scene.press ?? []) {
    // The round rests for a moment after each change of screen; a press during the rest does not count.
    await page.waitForTimeout(350);
    await page.click(selector);
  }
  await page.waitForTimeout(50);
}

/** @param colors false where the system's own colors are forced: axe-core reads the ones they replace; `measure` still looks */
async function axe(page: Page, colors: boolean): Promise<readonly string[]> {
  return page.evaluate<
    readonly string[]
  >(`axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'], rules: { 'color-contrast': { enabled: ${colors} } } })
    .then(({ violations }) => violations.map(({ id, nodes }) => 'axe ' + id + ': ' + nodes.map((node) => node.target.join(' ')).slice(0, 3).join(' | ')))`);
}

async function measure(page: Page, strict: boolean): Promise<Measured> {
  return page.evaluate<Measured>(`import('./measure.ts').then(({ measurePage }) => measurePage(${strict}))`);
}
