import { expect, it } from 'vitest';
import { newWireOf } from '../../src/report/newWire.ts';
import type { Drift } from '../../src/stability/drift/analyseDrift.ts';
import type { HistoryEvent, HistoryReading } from '../../src/stability/drift/history.ts';
import { exampleDrift } from '../screens/stability/exampleDrift.ts';

const RESTRUNG: HistoryEvent = { happenedOn: '2024-03-01', kind: 'restrung', fromMidi: null, toMidi: null };

/** Compared from each of these dates to the next, five cents flatter each time. */
function told(dates: readonly string[], settling: Drift['settling'], events = [RESTRUNG]) {
  const intervals = dates.slice(1).map((toDate, k) => ({
    fromDate: dates[k] ?? '',
    toDate,
    years: 0.5,
    humidityChangePct: 0,
    hasBaseline: true,
    missingCount: 0,
    medianCents: -5,
  }));
  const readings = dates.map((visitedOn) => ({ visitedOn }) as HistoryReading);
  return newWireOf({ drift: exampleDrift({ intervals, settling }), history: { events, readings } });
}

const fitOf = (remainingCentsPerYear: number) => ({ since: '2024-03-01', firstYearCents: -27, remainingCentsPerYear });

it('new wire that was not compared yet is said to be there, also where it came after the last visit', () => {
  expect(told(['2024-03-04'], null)).toEqual({ kind: 'not seen yet', since: '2024-03-01' });
  expect(told(['2022-03-04', '2023-03-04'], null)).toEqual({ kind: 'not seen yet', since: '2024-03-01' });
});

it('a part of the first year tells what was read, and claims nothing of the whole', () => {
  expect(told(['2024-03-04', '2024-05-04', '2024-08-04'], fitOf(-0.1))).toEqual({
    kind: 'first year',
    since: '2024-03-01',
    movedCents: -10,
  });
});

it.each([
  [-3, 'settling'],
  [-0.2, 'settled'],
  [0.4, 'settled'],
])('after the first year a fall of %s cents a year is %s', (centsPerYear, kind) => {
  const wire = told(['2024-03-04', '2024-08-04', '2025-03-04'], fitOf(centsPerYear));
  expect(wire).toEqual({ kind, since: '2024-03-01', firstYearCents: -27, centsPerYear });
});

it('says nothing of a first year in which nobody compared', () => {
  expect(told(['2025-06-01', '2025-12-01'], fitOf(-3))).toMatchObject({ kind: 'settling', firstYearCents: null });
});

it('wire of more than four years, or of a part of the compass, is not new', () => {
  expect(told(['2024-03-04', '2028-06-04'], fitOf(-3))).toBeNull();
  expect(told(['2024-03-04', '2025-03-04'], fitOf(-3), [{ ...RESTRUNG, fromMidi: 60, toMidi: 72 }])).toBeNull();
});
