/**
 * A JPEG as a phone writes it: with an APP1 segment that holds an orientation and a place. Layout: JEITA CP-3451 (Exif 2.3)
 * over TIFF 6.0, big-endian, from memory.
 */

const ascii = (text: string) => [...text].map((letter) => letter.charCodeAt(0));
const u16 = (value: number) => [value >> 8, value & 255];
const u32 = (value: number) => [...u16(Math.floor(value / 65_536)), ...u16(value % 65_536)];
/** Type 2 is ASCII, 3 a short, 4 a long, 5 a ratio. */
const field = (tag: number, type: number, count: number, value: readonly number[]) => [
  ...u16(tag),
  ...u16(type),
  ...u32(count),
  ...value,
];

const ORIENTATION = 0x0112;
const GPS_DIRECTORY = 0x8825;

/** Segment with the orientation (1 to 8) and 46° 12' 30" N. */
function app1(orientation: number): number[] {
  const tiff = [
    ...ascii('MM'),
    ...u16(42),
    ...u32(8),
    // Directory 0 at 8: two fields, and no further directory. It ends at 38.
    ...u16(2),
    ...field(ORIENTATION, 3, 1, [...u16(orientation), 0, 0]),
    ...field(GPS_DIRECTORY, 4, 1, u32(38)),
    ...u32(0),
    // The place at 38: reference and three ratios, which stand at 68.
    ...u16(2),
    ...field(1, 2, 2, [...ascii('N'), 0, 0, 0]),
    ...field(2, 5, 3, u32(68)),
    ...u32(0),
    ...[46, 12, 30].flatMap((part) => [...u32(part), ...u32(1)]),
  ];
  const content = [...ascii('Exif'), 0, 0, ...tiff];
  return [0xff, 0xe1, ...u16(content.length + 2), ...content];
}

/** @param jpeg a whole JPEG, beginning with its start mark */
export function withExif(jpeg: Uint8Array, orientation: number): Buffer {
  if (jpeg[0] !== 0xff || jpeg[1] !== 0xd8) throw new Error('not a JPEG');
  return Buffer.from([0xff, 0xd8, ...app1(orientation), ...jpeg.subarray(2)]);
}

/** Markers of the segments before the pixels: 0xE1 is APP1 (ITU-T T.81, annex B). */
export function segmentsOf(jpeg: Uint8Array): readonly number[] {
  const markers: number[] = [];
  let at = 2;
  while (at + 4 <= jpeg.length && jpeg[at] === 0xff) {
    const marker = jpeg[at + 1] ?? 0;
    markers.push(marker);
    if (marker === 0xda) break;
    at += 2 + (jpeg[at + 2] ?? 0) * 256 + (jpeg[at + 3] ?? 0);
  }
  return markers;
}
