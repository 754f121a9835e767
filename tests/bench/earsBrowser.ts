/**
 * How fast the ears are in the browser: the real Worker of a built page is given sound as fast as it takes it, under the app's policy.
 * `npx tsx tests/bench/earsBrowser.ts [every]`. A processor four times slower takes four times as long: developer tools slow only a page's
 * main thread down, and the ears are not in it, so the figure is multiplied.
 */
import { rmSync } from 'node:fs';
import { CONDITIONS, soundOf } from '../audio/conditions.ts';
import { buildEarsPage, openEarsPage, serveEarsPage } from '../audio/earsPage.ts';
import { requestOf } from '../audio/sentences.ts';
import { writeWav } from '../audio/wav.ts';
import { loadClips, readClip } from '../tools/makeClips.ts';

const RATE = 16_000;
const SILENCE = '/tmp/gloveside-silence.wav';
const every = Number(process.argv[2] ?? 12);

const all = loadClips().filter(({ set }) => set === 'reporting');
const talk = all.filter(({ check }) => check === null).map(readClip);
const clips = all.filter(({ check }, index) => check !== null && index % every === 0);

writeWav(SILENCE, { rate: RATE, samples: new Float32Array(60 * RATE) });
await buildEarsPage();
const served = await serveEarsPage();
const { browser, page } = await openEarsPage(served.url, SILENCE);
try {
  await page.evaluate((request) => {
    window.ears.request = request;
  }, requestOf('deadbolt').request);
  await page.click('#listen');
  await page.waitForFunction(() => window.ears.state?.kind === 'ready' && window.ears.events.length > 0);
  const worker = page.workers()[0];
  if (!worker) throw new Error('no Worker');
  // The runner of these scripts names functions by a helper that the Worker does not have.
  await worker.evaluate('self.__name = (named) => named');
  console.log(`${clips.length} answers a condition, Chromium ${browser.version()}`);
  console.log('| condition | real-time factor | times four | from a cold grammar to ready, ms (most) |');
  console.log('|---|---|---|---|');
  for (const condition of CONDITIONS) {
    let [seconds, ms, mostOpen] = [0, 0, 0];
    for (const clip of clips) {
      const { samples } = soundOf(clip, condition, talk);
      const took = await worker.evaluate(
        ({ request, sound }) => {
          const scope = self as unknown as {
            onmessage: (event: { data: unknown }) => void;
            postMessage: (event: { type: string }) => void;
          };
          const heard: string[] = [];
          const tell = scope.postMessage;
          scope.postMessage = ({ type }) => heard.push(type);
          // In place of the worklet's port: pieces are handed over without waiting for time to pass.
          const port = { onmessage: (_: { data: Float32Array }) => {}, close: () => {} };
          scope.onmessage({ data: { type: 'connect', port, rate: 16_000 } });
          const begun = performance.now();
          scope.onmessage({ data: { type: 'open', turn: 1, request, tailMs: 0 } });
          const opened = performance.now();
          const samples = Float32Array.from(sound);
          for (let at = 0; at < samples.length; at += 512) port.onmessage({ data: samples.slice(at, at + 512) });
          const done = performance.now();
          scope.onmessage({ data: { type: 'close' } });
          scope.postMessage = tell;
          return { openMs: opened - begun, ms: done - opened, heard };
        },
        { request: requestOf(clip.check ?? '').request, sound: [...samples] },
      );
      if (!took.heard.includes('speech.started')) continue;
      seconds += samples.length / RATE;
      ms += took.ms;
      mostOpen = Math.max(mostOpen, took.openMs);
    }
    const factor = ms / 1000 / seconds;
    console.log(`| ${condition.name} | ${factor.toFixed(3)} | ${(4 * factor).toFixed(2)} | ${mostOpen.toFixed(0)} |`);
  }
} finally {
  await browser.close();
  served.server.close();
  rmSync(SILENCE, { force: true });
}
