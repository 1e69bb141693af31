import { expect, it } from 'vitest';
import type { Take } from '../../../src/piano/instrument.ts';
import { historyRows } from '../../../src/screens/take/readingHistory.ts';
import { readingAt } from '../plainReading.ts';

const measured = { programVersion: '2.0.0', measuredAt: '2031-01-01T00:00:00.000Z' };
const sharpOf440 = (cents: number) => readingAt(69, cents);

it('tells each reading’s change from the one before, the newest first', () => {
  const take = {
    reading: sharpOf440(1.5),
    measured,
    earlierReadings: [
      { reading: sharpOf440(0), measured: null },
      { reading: sharpOf440(2), measured },
    ],
  } as unknown as Take;
  const rows = historyRows(take);
  expect(rows.map((row) => row.measured)).toEqual([measured, measured, null]);
  expect(rows[0]?.changeCents).toBeCloseTo(-0.5, 9);
  expect(rows[1]?.changeCents).toBeCloseTo(2, 9);
  expect(rows[2]?.changeCents).toBeNull();
});

it('has nothing to tell of a take that was read once', () => {
  expect(historyRows({ reading: readingAt(69, 0) } as unknown as Take)).toEqual([]);
});
