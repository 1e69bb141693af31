/**
 * When a photograph was taken, from what the camera wrote into its JPEG file. Nothing else of it is read: not where, not with what.
 *
 * Sources: ISO/IEC 10918-1, annex B (segments); CIPA DC-008 (Exif), sections 4.5 and 4.6 (TIFF directories, DateTimeOriginal,
 * OffsetTimeOriginal). Standing of the tag numbers: from memory, checked against files that a test writes by hand.
 */

const APP1 = 0xe1;
const START_OF_SCAN = 0xda;
const DATE_TIME = 0x0132;
const EXIF_DIRECTORY = 0x8769;
const DATE_TIME_ORIGINAL = 0x9003;
const OFFSET_TIME_ORIGINAL = 0x9011;
const ASCII = 2;
const ENTRY_BYTES = 12;

/**
 * ISO 8601 date and time, with the offset from UTC where the camera gave one; null where the file says none or is damaged.
 * @example exifDate(bytesOfJpeg) // '2021-05-04T09:12:33+02:00'
 */
export function exifDate(jpeg: Uint8Array): string | null {
  const tiff = exifBlock(jpeg);
  if (!tiff) return null;
  const isLittleEndian = tiff.getUint16(0) === 0x4949;
  const first = entriesOf(tiff, tiff.getUint32(4, isLittleEndian), isLittleEndian);
  const exifAt = first.get(EXIF_DIRECTORY)?.value;
  const exif = exifAt === undefined ? new Map<number, Entry>() : entriesOf(tiff, exifAt, isLittleEndian);
  const written = textOf(tiff, exif.get(DATE_TIME_ORIGINAL)) ?? textOf(tiff, first.get(DATE_TIME));
  const found = written && /^(\d{4}):(\d{2}):(\d{2}) (\d{2}:\d{2}:\d{2})$/.exec(written);
  if (!found || Number(found[2]) === 0 || Number(found[3]) === 0) return null;
  const offset = textOf(tiff, exif.get(OFFSET_TIME_ORIGINAL)) ?? '';
  return `${found[1]}-${found[2]}-${found[3]}T${found[4]}${/^[+-]\d{2}:\d{2}$/.test(offset) ? offset : ''}`;
}

/** The TIFF structure inside the first Exif segment; undefined where there is none that is whole. */
function exifBlock(jpeg: Uint8Array): DataView | undefined {
  const view = new DataView(jpeg.buffer, jpeg.byteOffset, jpeg.byteLength);
  if (view.byteLength < 4 || view.getUint16(0) !== 0xffd8) return undefined;
  for (let at = 2; at + 4 <= view.byteLength && view.getUint8(at) === 0xff; ) {
    const marker = view.getUint8(at + 1);
    const length = view.getUint16(at + 2);
    if (marker === START_OF_SCAN || length < 2 || at + 2 + length > view.byteLength) return undefined;
    const isExif = marker === APP1 && length >= 16 && view.getUint32(at + 4) === 0x45786966; // "Exif"
    if (isExif) return new DataView(view.buffer, view.byteOffset + at + 10, length - 8);
    at += 2 + length;
  }
  return undefined;
}

type Entry = { readonly type: number; readonly count: number; readonly value: number };

/** A directory's entries by tag; as many of them as are inside the block. */
function entriesOf(tiff: DataView, directoryAt: number, isLittleEndian: boolean): Map<number, Entry> {
  const entries = new Map<number, Entry>();
  if (directoryAt + 2 > tiff.byteLength) return entries;
  const count = tiff.getUint16(directoryAt, isLittleEndian);
  for (let index = 0; index < count; index += 1) {
    const at = directoryAt + 2 + index * ENTRY_BYTES;
    if (at + ENTRY_BYTES > tiff.byteLength) break;
    entries.set(tiff.getUint16(at, isLittleEndian), {
      type: tiff.getUint16(at + 2, isLittleEndian),
      count: tiff.getUint32(at + 4, isLittleEndian),
      value: tiff.getUint32(at + 8, isLittleEndian),
    });
  }
  return entries;
}

/** Text longer than four bytes stands elsewhere, at the entry's value; dates and offsets always are. */
function textOf(tiff: DataView, entry: Entry | undefined): string | undefined {
  if (!entry || entry.type !== ASCII || entry.count <= 4 || entry.value + entry.count > tiff.byteLength)
    return undefined;
  const bytes = new Uint8Array(tiff.buffer, tiff.byteOffset + entry.value, entry.count);
  return String.fromCharCode(...bytes.subarray(0, 40))
    .replace(/\0.*$/s, '')
    .trim();
}
