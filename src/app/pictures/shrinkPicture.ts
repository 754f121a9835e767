/**
 * A picture as it is kept: small, upright, and without anything that the camera wrote beside it. Only the pixels go on, so
 * place, time and maker of the camera are gone whatever form they were written in.
 */
import { PictureError } from './pictureError.ts';

/** Enough to read the stamp on a tire, small enough for hundreds of them on a phone. */
export const LONGEST_SIDE = 1600;
const JPEG_QUALITY = 0.8;

export const KEPT_TYPE = 'image/jpeg';

/**
 * The size that fits into {@link LONGEST_SIDE}, never larger than it was.
 * @param width, height in pixels, above 0
 */
export function fittedSize(width: number, height: number): { readonly width: number; readonly height: number } {
  const scale = Math.min(1, LONGEST_SIDE / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
}

/**
 * Decodes a picture, turns it as its orientation mark says, fits it and writes it anew as JPEG.
 * @throws PictureError `empty`, `heic`, `unreadable`, `too-large`
 */
export async function shrinkPicture(picture: Blob): Promise<ArrayBuffer> {
  if (picture.size === 0) throw new PictureError('empty');
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(picture, { imageOrientation: 'from-image' });
  } catch (cause) {
    throw new PictureError((await isHeic(picture)) ? 'heic' : 'unreadable', { cause });
  }
  try {
    return await jpegOf(bitmap, bitmap.width, bitmap.height);
  } finally {
    bitmap.close();
  }
}

/** What is drawn, fitted, as JPEG. @throws PictureError `too-large` when the browser has no canvas of that size */
export async function jpegOf(source: CanvasImageSource, fromWidth: number, fromHeight: number): Promise<ArrayBuffer> {
  const { width, height } = fittedSize(fromWidth, fromHeight);
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const drawing = canvas.getContext('2d', { alpha: false });
  if (!drawing) throw new PictureError('too-large');
  drawing.imageSmoothingQuality = 'high';
  // JPEG has no transparency: what was see-through becomes white, not black.
  drawing.fillStyle = '#ffffff';
  drawing.fillRect(0, 0, width, height);
  drawing.drawImage(source, 0, 0, width, height);
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, KEPT_TYPE, JPEG_QUALITY));
  if (!blob || blob.type !== KEPT_TYPE) throw new PictureError('too-large');
  return blob.arrayBuffer();
}

/** By the mark in its first bytes (ISO/IEC 14496-12 `ftyp` box, brands of ISO/IEC 23008-12), not by its name. */
async function isHeic(picture: Blob): Promise<boolean> {
  const head = new TextDecoder('latin1').decode(await picture.slice(0, 32).arrayBuffer());
  return head.slice(4, 8) === 'ftyp' && /heic|heix|heim|heis|hevc|mif1|msf1/.test(head.slice(8));
}
