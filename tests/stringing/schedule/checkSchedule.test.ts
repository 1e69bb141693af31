import { expect, it } from 'vitest';
import { checkSchedule } from '../../../src/stringing/schedule/checkSchedule.ts';
import { plainRows, woundRow } from './rows.ts';

const complaints = (rows: Parameters<typeof checkSchedule>[0]) =>
  checkSchedule(rows).map(({ midi, field, kind }) => [midi, field, kind]);

it('finds nothing in a schedule that fits together', () => {
  expect(
    complaints([
      woundRow(48, { speakingLengthMm: 1100 }),
      woundRow(49, { speakingLengthMm: 1080 }),
      ...plainRows(50, 80),
    ]),
  ).toEqual([]);
});

it.each([
  [{ coreDiameterMm: 2 }, 'coreDiameterMm', 'core-not-thinner'],
  [{ wrap: null }, 'wrap', 'wrap-missing'],
  [{ coreDiameterMm: null }, 'coreDiameterMm', 'core-missing'],
] as const)('finds a fault in %o', (change, field, kind) => {
  expect(complaints([woundRow(40, change)])).toContainEqual([40, field, kind]);
});

it('names the one length that is off, and not its neighbours', () => {
  const rows = plainRows(50, 70).map((row) =>
    row.midi === 60 ? { ...row, speakingLengthMm: (row.speakingLengthMm ?? 0) * 0.9 } : row,
  );
  expect(complaints(rows)).toEqual([
    [60, 'speakingLengthMm', 'length-off-line'],
    [61, 'speakingLengthMm', 'length-rises'],
  ]);
});

it('looks at what rises, and at wound wire above plain', () => {
  const rows = plainRows(60, 64).map((row) =>
    row.midi === 62 ? { ...row, wireDiameterMm: 1.1, stringCount: 2 } : row,
  );
  expect(complaints([...rows, woundRow(65, { bridge: 'long', stringCount: 3 })])).toEqual([
    [62, 'wireDiameterMm', 'diameter-rises'],
    [62, 'stringCount', 'string-count-falls'],
    [65, 'wireDiameterMm', 'diameter-rises'],
    [65, 'wrap', 'wound-among-plain'],
  ]);
});
