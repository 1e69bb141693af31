/** A hand-written Exif segment for JPEG files: date, orientation and position, as a camera with GPS writes them. */

export type ExifWish = {
  readonly dateTimeOriginal?: string;
  readonly offsetTimeOriginal?: string;
  /** 1 to 8; 6: the picture has to be turned a quarter clockwise. */
  readonly orientation?: number;
  readonly hasPosition?: boolean;
  readonly isLittleEndian?: boolean;
};

type Field = {
  readonly tag: number;
  readonly type: number;
  readonly count: number;
  readonly value: number | Uint8Array;
};

const ascii = (tag: number, text: string): Field => {
  const value = new Uint8Array([...text].map((letter) => letter.charCodeAt(0)).concat(0));
  return { tag, type: 2, count: value.length, value };
};
const short = (tag: number, value: number): Field => ({ tag, type: 3, count: 1, value });
const pointer = (tag: number, value: number): Field => ({ tag, type: 4, count: 1, value });

/** The whole APP1 segment, marker included. */
export function exifSegment(wish: ExifWish): Uint8Array<ArrayBuffer> {
  const tiff = tiffBlock(wish);
  const length = tiff.length + 8;
  return Uint8Array.from([0xff, 0xe1, length >> 8, length & 0xff, ...asciiBytes('Exif'), 0, 0, ...tiff]);
}

/** The segment put where cameras put it: right after the start of the file. */
export function withExif(jpeg: Uint8Array, wish: ExifWish): Uint8Array<ArrayBuffer> {
  return Uint8Array.from([...jpeg.subarray(0, 2), ...exifSegment(wish), ...jpeg.subarray(2)]);
}

function asciiBytes(text: string): number[] {
  return [...text].map((letter) => letter.charCodeAt(0));
}

function tiffBlock({
  dateTimeOriginal,
  offsetTimeOriginal,
  orientation,
  hasPosition,
  isLittleEndian = true,
}: ExifWish) {
  const block = new Uint8Array(400);
  const view = new DataView(block.buffer);
  const [exifAt, positionAt] = [100, 200];
  view.setUint16(0, isLittleEndian ? 0x4949 : 0x4d4d);
  view.setUint16(2, 42, isLittleEndian);
  view.setUint32(4, 8, isLittleEndian);
  let dataAt = 300;
  const writeDirectory = (at: number, fields: readonly Field[]) => {
    view.setUint16(at, fields.length, isLittleEndian);
    for (const [index, { tag, type, count, value }] of fields.entries()) {
      const entryAt = at + 2 + index * 12;
      view.setUint16(entryAt, tag, isLittleEndian);
      view.setUint16(entryAt + 2, type, isLittleEndian);
      view.setUint32(entryAt + 4, count, isLittleEndian);
      if (typeof value === 'number' && type === 3) view.setUint16(entryAt + 8, value, isLittleEndian);
      else if (typeof value === 'number') view.setUint32(entryAt + 8, value, isLittleEndian);
      else if (value.length <= 4) block.set(value, entryAt + 8);
      else {
        view.setUint32(entryAt + 8, dataAt, isLittleEndian);
        block.set(value, dataAt);
        dataAt += value.length;
      }
    }
  };
  writeDirectory(8, [
    ...(orientation === undefined ? [] : [short(0x0112, orientation)]),
    pointer(0x8769, exifAt),
    ...(hasPosition ? [pointer(0x8825, positionAt)] : []),
  ]);
  writeDirectory(exifAt, [
    ...(dateTimeOriginal === undefined ? [] : [ascii(0x9003, dateTimeOriginal)]),
    ...(offsetTimeOriginal === undefined ? [] : [ascii(0x9011, offsetTimeOriginal)]),
  ]);
  if (hasPosition) writeDirectory(positionAt, [ascii(0x0001, 'N'), ascii(0x001d, '2021:05:04')]);
  return block;
}
