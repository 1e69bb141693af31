import { describe, expect, it } from 'vitest';
import { exifDate } from '../../../src/files/photograph/exifDate.ts';
import { withExif } from '../../support/exifSegment.ts';

/** The start and the end of a JPEG file with a JFIF segment between: no picture is needed to find the date. */
const JPEG = Uint8Array.of(0xff, 0xd8, 0xff, 0xe0, 0, 4, 1, 2, 0xff, 0xd9);
const DATE = '2021:05:04 09:12:33';

describe('exifDate', () => {
  it.each([true, false])('reads the date that the camera wrote, little endian %s', (isLittleEndian) => {
    expect(exifDate(withExif(JPEG, { dateTimeOriginal: DATE, isLittleEndian }))).toBe('2021-05-04T09:12:33');
  });

  it('adds the offset from UTC where the camera gave one', () => {
    const wish = { dateTimeOriginal: DATE, offsetTimeOriginal: '+02:00', orientation: 6, hasPosition: true };
    expect(exifDate(withExif(JPEG, wish))).toBe('2021-05-04T09:12:33+02:00');
  });

  it.each([
    ['no Exif at all', JPEG],
    ['an unset clock', withExif(JPEG, { dateTimeOriginal: '0000:00:00 00:00:00' })],
    ['no date', withExif(JPEG, { orientation: 3 })],
    ['no JPEG', Uint8Array.of(0x89, 0x50, 0x4e, 0x47)],
    ['nothing', new Uint8Array()],
  ])('gives null for %s', (_what, bytes) => {
    expect(exifDate(bytes)).toBeNull();
  });

  it('never fails, wherever the file is cut off or a byte is wrong', () => {
    const whole = withExif(JPEG, { dateTimeOriginal: DATE, offsetTimeOriginal: '+02:00' });
    for (let length = 0; length < whole.length; length += 1) {
      exifDate(whole.subarray(0, length));
      const wrong = whole.slice();
      wrong[length] = 0xff;
      const date = exifDate(wrong);
      expect(date === null || /^\d{4}-\d{2}-\d{2}T/.test(date)).toBe(true);
    }
  });
});
