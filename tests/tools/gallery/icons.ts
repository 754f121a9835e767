/** Renders the app's icons from their drawings: `npx tsx tests/tools/gallery/icons.ts`. */
import { readFileSync } from 'node:fs';
import { chromium } from 'playwright-core';

const ICONS = [
  { drawing: 'icon', file: 'icon-192', side: 192 },
  { drawing: 'icon', file: 'icon-512', side: 512 },
  { drawing: 'icon-maskable', file: 'icon-maskable-512', side: 512 },
] as const;

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking', '--disable-sync'],
});
try {
  for (const { drawing, file, side } of ICONS) {
    const page = await browser.newPage({ viewport: { width: side, height: side } });
    const svg = readFileSync(`public/icons/${drawing}.svg`, 'utf8').replace(
      '<svg ',
      `<svg width="${side}" height="${side}" style="display:block" `,
    );
    await page.setContent(`<body style="margin:0">${svg}</body>`);
    await page.screenshot({ path: `public/icons/${file}.png`, omitBackground: true });
    await page.close();
  }
} finally {
  await browser.close();
}
