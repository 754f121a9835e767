/** Clips and photos beside the exported text, in one zip. */
import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from 'fflate';

export const TEXT_NAME = 'gloveside.json';

export interface ZippedMedia {
  readonly kind: 'clip' | 'photo';
  /** As entries name it. */
  readonly id: string;
  /** MIME type. */
  readonly type: string;
  readonly bytes: Uint8Array;
}

export type Unzipped =
  | { readonly ok: true; readonly text: string; readonly media: readonly ZippedMedia[]; readonly warnings: readonly string[] }
  | { readonly ok: false; readonly sentence: string };

const LARGEST_TEXT = 256 * 1024 * 1024;
const LARGEST_MEDIUM = 32 * 1024 * 1024;
const LARGEST_TOTAL = 1024 * 1024 * 1024;
const MOST_FILES = 100_000;
/** Sound and pictures are compressed already; deflating them again only takes time. */
const STORED = 0;
/** The zip format has no earlier day; a fixed one keeps the same data the same file. */
const EARLIEST = Date.UTC(1980, 0, 2);

const TYPES: Readonly<Record<string, string>> = {
  wav: 'audio/wav',
  webm: 'audio/webm',
  ogg: 'audio/ogg',
  m4a: 'audio/mp4',
  jpg: 'image/jpeg',
  png: 'image/png',
  webp: 'image/webp',
  bin: 'application/octet-stream',
};

/** One zip: the exported text and every clip and photo under its id. */
export function packZip(text: string, media: readonly ZippedMedia[]): Uint8Array {
  const files: Zippable = { [TEXT_NAME]: [strToU8(text), { level: 6, mtime: EARLIEST }] };
  for (const { kind, id, type, bytes } of media) {
    files[`${kind}s/${encodeURIComponent(id)}.${extensionFor(type)}`] = [bytes, { level: STORED, mtime: EARLIEST }];
  }
  return zipSync(files);
}

/**
 * What a zip holds, or a sentence that says what to do. Never throws.
 *
 * Sizes are checked before anything is inflated, so that a small file can not become a huge one; names that are not ours
 * are passed over, and never used as paths.
 */
export function unpackZip(bytes: Uint8Array): Unzipped {
  let total = 0;
  let count = 0;
  let tooLarge = false;
  const odd = new Set<string>();
  let files: Record<string, Uint8Array>;
  try {
    files = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        const wanted = name === TEXT_NAME || mediaName(name) !== null;
        if (!wanted) {
          if (!name.endsWith('/')) odd.add(name);
          return false;
        }
        total += originalSize;
        count++;
        tooLarge ||=
          originalSize > (name === TEXT_NAME ? LARGEST_TEXT : LARGEST_MEDIUM) || total > LARGEST_TOTAL || count > MOST_FILES;
        return !tooLarge;
      },
    });
  } catch {
    return { ok: false, sentence: 'The zip file is damaged. Copy it again from where it was saved, and try once more.' };
  }
  if (tooLarge)
    return { ok: false, sentence: 'The zip file holds more than this app ever saves. Choose the file that this app saved.' };
  const text = files[TEXT_NAME];
  if (!text)
    return {
      ok: false,
      sentence: 'The zip file is not one of ours: the record is missing in it. Choose the file that this app saved.',
    };
  const media = Object.entries(files).flatMap(([name, content]): ZippedMedia[] => {
    const found = mediaName(name);
    return found ? [{ ...found, bytes: content }] : [];
  });
  const warnings =
    odd.size === 0
      ? []
      : [
          `${odd.size} ${odd.size === 1 ? 'file in the zip is' : 'files in the zip are'} not ours and ${odd.size === 1 ? 'was' : 'were'} passed over.`,
        ];
  return { ok: true, text: strFromU8(text), media, warnings };
}

function mediaName(name: string): Omit<ZippedMedia, 'bytes'> | null {
  const match = /^(clip|photo)s\/([A-Za-z0-9%_.!~*'()-]{1,600})\.([a-z0-9]{1,5})$/.exec(name);
  const type = TYPES[match?.[3] ?? ''];
  if (!match?.[2] || type === undefined) return null;
  try {
    return { kind: match[1] === 'clip' ? 'clip' : 'photo', id: decodeURIComponent(match[2]), type };
  } catch {
    return null;
  }
}

function extensionFor(type: string): string {
  const plain = type.split(';')[0] ?? '';
  return Object.entries(TYPES).find(([, known]) => known === plain)?.[0] ?? 'bin';
}
