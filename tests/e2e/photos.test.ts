/** Pictures on the production build: by a button, by voice, without a camera, without room, deleted, taken elsewhere. */
import { readFileSync } from 'node:fs';
import type { BrowserContext, Page } from 'playwright-core';
import { afterEach, describe, expect, inject, it } from 'vitest';
import { dropProfile, freshProfile, openBrowser, openPage } from './support/browser.ts';
import { segmentsOf, withExif } from './support/exifJpeg.ts';
import { answersFor, beginWith, demoUnit, openWithDemo, planFor, say, startRoundOf, walkByVoice } from './support/person.ts';

const origin = inject('origin');
const FAKE_CAMERA = ['--use-fake-device-for-media-stream', '--use-fake-ui-for-media-stream'];
const kestrel = demoUnit('Kestrel');
const plan = planFor(kestrel);

interface KeptPicture {
  readonly id: string;
  readonly type: string;
  readonly bytes: Uint8Array;
}

interface Noted {
  readonly kind: string;
  readonly key?: string;
  readonly photo?: string | null;
  readonly how?: { readonly via: string };
}

describe('pictures', () => {
  const opened: { context: BrowserContext; profile: string }[] = [];
  const open = async (options: { flags?: readonly string[]; permissions?: readonly string[] } = {}) => {
    const profile = freshProfile();
    const context = await openBrowser({ profile, ...options });
    opened.push({ context, profile });
    return openPage(context, origin);
  };
  afterEach(async () => {
    for (const { context, profile } of opened.splice(0)) {
      await context.close();
      dropProfile(profile);
    }
  });

  /** Everything in a store, read without the app's own code. */
  const stored = <T>(page: Page, store: string): Promise<T[]> =>
    page.evaluate(
      (name) =>
        new Promise<never[]>((resolve, reject) => {
          const opening = indexedDB.open('gloveside');
          opening.onerror = () => reject(opening.error);
          opening.onsuccess = () => {
            const read = opening.result.transaction(name).objectStore(name).getAll();
            read.onsuccess = () => {
              opening.result.close();
              // Bytes do not cross from the page as they are.
              resolve(read.result.map((row) => (row.bytes ? { ...row, bytes: [...new Uint8Array(row.bytes)] } : row)) as never[]);
            };
            read.onerror = () => reject(read.error);
          };
        }),
      store,
    );
  const pictures = async (page: Page): Promise<KeptPicture[]> => {
    const rows = await stored<{ id: string; type: string }>(page, 'photos');
    const bytes = await stored<{ id: string; bytes: number[] }>(page, 'photoBytes');
    return rows.map(({ id, type }) => ({
      id,
      type,
      bytes: Uint8Array.from(bytes.find((row) => row.id === id)?.bytes ?? []),
    }));
  };
  const notes = async (page: Page) =>
    (await stored<Noted>(page, 'entries')).filter((entry) => entry.kind === 'noted' && entry.photo);

  /** A JPEG of the page's own making, left half red, right half blue. */
  const jpeg = async (page: Page, width: number, height: number): Promise<Uint8Array> =>
    Uint8Array.from(
      await page.evaluate(
        async ([wide, high]) => {
          const canvas = document.createElement('canvas');
          canvas.width = wide;
          canvas.height = high;
          const drawing = canvas.getContext('2d');
          if (!drawing) throw new Error('no canvas');
          drawing.fillStyle = '#f00000';
          drawing.fillRect(0, 0, wide / 2, high);
          drawing.fillStyle = '#0000f0';
          drawing.fillRect(wide / 2, 0, wide / 2, high);
          const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', 0.9));
          return [...new Uint8Array((await blob?.arrayBuffer()) ?? new ArrayBuffer(0))];
        },
        [width, height] as const,
      ),
    );

  /** Size, and the color at the middle of the top and of the bottom. */
  const seenIn = (page: Page, picture: Uint8Array) =>
    page.evaluate(
      async (bytes) => {
        const bitmap = await createImageBitmap(new Blob([Uint8Array.from(bytes)]));
        const canvas = document.createElement('canvas');
        canvas.width = bitmap.width;
        canvas.height = bitmap.height;
        const drawing = canvas.getContext('2d');
        if (!drawing) throw new Error('no canvas');
        drawing.drawImage(bitmap, 0, 0);
        const middle = Math.floor(bitmap.width / 2);
        const at = (y: number) => [...drawing.getImageData(middle, y, 1, 1).data].slice(0, 3).map((part) => part > 128);
        return { width: bitmap.width, height: bitmap.height, top: at(5), bottom: at(bitmap.height - 5) };
      },
      [...picture],
    );

  const startWithout = async (page: Page, query: string) => {
    await openWithDemo(page, origin, query);
    await startRoundOf(page, kestrel);
    await beginWith(page, /begin alone/i);
  };

  /** Presses More and Take a picture, and gives the file as the device's camera would. */
  const takeByButton = async (page: Page, name: string, mimeType: string, buffer: Buffer) => {
    const tile = page.getByRole('button', { name: 'Take a picture' });
    await expect
      .poll(
        async () => {
          if (!(await tile.isVisible())) await page.getByRole('button', { name: 'More', exact: true }).click();
          return tile.isVisible();
        },
        { interval: 400, timeout: 10_000 },
      )
      .toBe(true);
    const box = await tile.boundingBox();
    expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(96);
    const chooser = page.waitForEvent('filechooser');
    // Right after the screen has changed a press rests.
    await expect
      .poll(async () => {
        await tile.click();
        return Promise.race([chooser.then(() => true), page.waitForTimeout(400).then(() => false)]);
      })
      .toBe(true);
    await (await chooser).setFiles({ name, mimeType, buffer });
  };

  it('by a button: small, upright, without place, with its check, played back, deleted when that is confirmed', async () => {
    const { page, troubles } = await open();
    await startWithout(page, '?ears=off&mouth=silent&clock=60');
    const key = (await page.locator('.run').getAttribute('data-check')) ?? '';
    const given = withExif(await jpeg(page, 4000, 2000), 6);
    expect(segmentsOf(given)).toContain(0xe1);
    expect(given.includes('Exif')).toBe(true);
    await takeByButton(page, 'tire.jpg', 'image/jpeg', given);
    await expect.poll(() => notes(page), { timeout: 20_000 }).toHaveLength(1);

    const [note] = await notes(page);
    expect(note).toMatchObject({ key, how: { via: 'button' } });
    const [kept] = await pictures(page);
    expect(kept).toMatchObject({ id: note?.photo, type: 'image/jpeg' });
    const bytes = kept?.bytes ?? new Uint8Array();
    expect(segmentsOf(bytes)).not.toContain(0xe1);
    expect(Buffer.from(bytes).includes('Exif')).toBe(false);
    expect(bytes.length).toBeLessThan(given.length);
    // Orientation 6 (TIFF 6.0): the first row is the right side, the first column the top.
    expect(await seenIn(page, bytes)).toEqual({
      width: 800,
      height: 1600,
      top: [true, false, false],
      bottom: [false, false, true],
    });
    // The check is still asked: a picture answers nothing.
    expect(await page.locator('.run').getAttribute('data-check')).toBe(key);

    const [round] = await stored<{ id: string; startedAt: number }>(page, 'rounds').then((rounds) =>
      rounds.sort((a, b) => b.startedAt - a.startedAt),
    );
    await page.evaluate((id) => {
      location.hash = `#/round/${id}`;
    }, round?.id);
    const shown = page.locator('.look-photo');
    await shown.waitFor();
    await expect.poll(() => shown.evaluate((image: HTMLImageElement) => image.naturalHeight)).toBe(1600);
    const remove = page.getByRole('button', { name: /Delete the picture/ });
    await remove.focus();
    await page.keyboard.press('Enter');
    expect(await pictures(page)).toHaveLength(1);
    await page.keyboard.press('Enter');
    await page.getByText('The picture is no longer kept.').waitFor();
    expect(await pictures(page)).toEqual([]);
    expect(await notes(page)).toHaveLength(1);
    expect(troubles).toEqual([]);
  });

  it('by voice, without a hand: hold still, kept with its check, and the same check goes on', async () => {
    const { page, troubles } = await open({ flags: FAKE_CAMERA, permissions: ['camera'] });
    await openWithDemo(page, origin);
    await startRoundOf(page, kestrel);
    const key = plan.checks[3]?.key ?? '';
    await walkByVoice(page, answersFor(plan), { check: key });
    await say(page, 'take a picture');
    await expect.poll(() => notes(page), { timeout: 20_000 }).toHaveLength(1);
    expect(await notes(page)).toMatchObject([{ key, how: { via: 'voice' } }]);
    const [kept] = await pictures(page);
    expect(segmentsOf(kept?.bytes ?? new Uint8Array())).not.toContain(0xe1);
    const { width, height } = await seenIn(page, kept?.bytes ?? new Uint8Array());
    expect(Math.max(width, height)).toBeGreaterThanOrEqual(640);
    expect(Math.max(width, height)).toBeLessThanOrEqual(1600);
    await page.getByText('Picture kept.').first().waitFor();
    // The camera was given back, and the round ends as it would have.
    const { phase } = await walkByVoice(page, answersFor(plan), { phase: 'complete' });
    expect(phase).toBe('complete');
    expect(troubles).toEqual([]);
  });

  it.each([
    ['is no camera', { permissions: ['camera'] }, /There is no camera that I can use/],
    ['is no permission', { flags: ['--use-fake-device-for-media-stream'] }, /The camera is not allowed here/],
  ])('says so when there %s, names the button, and goes on', async (_what, options, sentence) => {
    const { page } = await open(options);
    await openWithDemo(page, origin);
    await startRoundOf(page, kestrel);
    const key = plan.checks[1]?.key ?? '';
    await walkByVoice(page, answersFor(plan), { check: key });
    await say(page, 'take a photo');
    await page.getByText(sentence).first().waitFor();
    expect(await page.getByText(/Press More, then Take a picture/).count()).toBeGreaterThan(0);
    expect(await notes(page)).toEqual([]);
    expect((await walkByVoice(page, answersFor(plan), { check: plan.checks[4]?.key ?? '' })).phase).toBe('asking');
  });

  it('that cannot be read keep nothing and say why', async () => {
    const { page } = await open();
    await startWithout(page, '?ears=off&mouth=silent&clock=60');
    const whole = Buffer.from(await jpeg(page, 600, 400));
    const heic = Buffer.concat([Buffer.from([0, 0, 0, 24]), Buffer.from('ftypheic'), Buffer.alloc(200)]);
    const cases: readonly (readonly [string, string, Buffer, RegExp])[] = [
      ['a.heic', 'image/heic', heic, /cannot read HEIC pictures/],
      ['b.jpg', 'image/jpeg', whole.subarray(0, 40), /damaged, or it is no picture/],
      ['c.jpg', 'image/jpeg', Buffer.from('these are words'), /damaged, or it is no picture/],
      ['d.jpg', 'image/jpeg', Buffer.alloc(0), /That file is empty/],
    ];
    for (const [name, type, content, sentence] of cases) {
      await takeByButton(page, name, type, content);
      await page.getByText(sentence).first().waitFor();
    }
    expect(await pictures(page)).toEqual([]);
    expect(await notes(page)).toEqual([]);
  });

  it('that find no room keep nothing and say so', async () => {
    const { page } = await open();
    await startWithout(page, '?ears=off&mouth=silent&clock=60');
    const given = Buffer.from(await jpeg(page, 1500, 1500));
    await page.evaluate(() => {
      const { add } = IDBObjectStore.prototype;
      IDBObjectStore.prototype.add = function (this: IDBObjectStore, ...row: Parameters<typeof add>) {
        if (this.name === 'photoBytes') throw new DOMException('full', 'QuotaExceededError');
        return add.apply(this, row);
      };
    });
    await takeByButton(page, 'a.jpg', 'image/jpeg', given);
    await page
      .getByText(/There is no room left on this device/)
      .first()
      .waitFor();
    expect(await pictures(page)).toEqual([]);
    expect(await notes(page)).toEqual([]);
  });

  it('go into the saved file and come out of it elsewhere', async () => {
    const { page } = await open();
    await startWithout(page, '?ears=off&mouth=silent&clock=60');
    await takeByButton(page, 'a.jpg', 'image/jpeg', withExif(await jpeg(page, 900, 600), 1));
    await expect.poll(() => pictures(page), { timeout: 20_000 }).toHaveLength(1);
    const [before] = await pictures(page);
    await page.evaluate(() => {
      location.hash = '#/files';
    });
    const saving = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save everything, clips and pictures too' }).click();
    const saved = readFileSync(await (await saving).path());
    expect(saved.subarray(0, 2).toString()).toBe('PK');

    const { page: other } = await open();
    await other.goto(`${origin}/?ears=off&mouth=silent#/files`);
    await other.getByLabel('File to import').setInputFiles({ name: 'all.zip', mimeType: 'application/zip', buffer: saved });
    await other.getByText(/Taken over:/).waitFor({ timeout: 60_000 });
    await expect.poll(() => pictures(other)).toHaveLength(1);
    const [after] = await pictures(other);
    expect(after?.id).toBe(before?.id);
    expect(Buffer.from(after?.bytes ?? []).equals(Buffer.from(before?.bytes ?? []))).toBe(true);
  });
});
