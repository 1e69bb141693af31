import { describe, expect, it } from 'vitest';
import type { Visit } from '../../src/piano/instrument.ts';
import { pitchCourse } from '../../src/report/pitchCourse.ts';
import type { Drift } from '../../src/stability/drift/analyseDrift.ts';

type Parts = Pick<Drift, 'intervals' | 'detail'>;

/** Ten strings from C4 up; each row is what they did in one interval, null where one was not read. */
function drift(dates: readonly (readonly [string, string])[], rows: readonly (readonly (number | null)[])[]): Parts {
  const strings = Array.from({ length: 10 }, (_, index) => ({
    midi: 60 + index,
    stringPosition: 2 as const,
    centsPerPct: 0,
    standardUncertainty: 1,
  }));
  const changes = rows.flatMap((row, intervalIndex) =>
    row.flatMap((cents, stringIndex) =>
      cents === null
        ? []
        : [
            {
              stringIndex,
              intervalIndex,
              cents,
              wholeCents: 0,
              ownCents: cents,
              standardUncertaintyCents: 1,
              readingUncertaintyCents: 1,
            },
          ],
    ),
  );
  return {
    intervals: dates.map(([fromDate, toDate]) => ({
      fromDate,
      toDate,
      years: 0.5,
      humidityChangePct: 0,
      hasBaseline: true,
      missingCount: 0,
      medianCents: 0,
    })),
    detail: { strings, changes, isHumidityKnown: false, seasonPct: [], commonCents: [] },
  };
}

const same = (cents: number) => Array.from({ length: 10 }, () => cents);
const TWO = [
  ['2020-01-01', '2020-07-01'],
  ['2020-07-01', '2021-01-01'],
] as const;

describe('pitchCourse', () => {
  it('adds up what happened between tunings: a season comes back, a slip stays', () => {
    const slipping = (cents: number) => [...same(cents).slice(1), cents - 3];
    const { steps } = pitchCourse(drift(TWO, [slipping(5), slipping(-5)]), [], [{ fromMidi: 69, toMidi: 69 }]);
    expect(steps.map(({ whole }) => whole.medianCents)).toEqual([5, 0]);
    expect(steps.map(({ part }) => part?.medianCents)).toEqual([2, -6]);
  });

  it('takes a string that was not read once to have moved as the middle string did', () => {
    const { steps } = pitchCourse(
      drift(TWO, [[...same(4).slice(1), null], same(1)]),
      [],
      [{ fromMidi: 69, toMidi: 69 }],
    );
    expect(steps[1]?.part?.medianCents).toBe(5);
  });

  it('draws a part only from where it was read: what a new pin replaced says nothing about it', () => {
    const first = [...same(4).slice(1), null];
    const { steps } = pitchCourse(drift(TWO, [first, [...same(1).slice(1), -2]]), [], [{ fromMidi: 69, toMidi: 69 }]);
    expect(steps.map(({ part }) => part?.medianCents ?? null)).toEqual([null, 2]);
  });

  it('begins anew at nought after a time of which nothing is known', () => {
    const gap = [
      ['2020-01-01', '2020-07-01'],
      ['2021-01-01', '2021-07-01'],
    ] as const;
    const { steps } = pitchCourse(drift(gap, [same(4), same(1)]), [], []);
    expect(steps.map(({ startsAnew, whole }) => [startsAnew, whole.medianCents])).toEqual([
      [true, 4],
      [true, 1],
    ]);
  });

  it('passes over a comparison of too few strings', () => {
    const few = [1, 1, 1, 1, ...Array.from({ length: 6 }, () => null)];
    expect(pitchCourse(drift(TWO.slice(0, 1), [few]), [], []).steps).toEqual([]);
  });

  it('says between which bounds four strings in five lie', () => {
    const { steps } = pitchCourse(drift(TWO.slice(0, 1), [[0, 1, 2, 3, 4, 5, 6, 7, 8, 9]]), [], []);
    // Linear between order statistics of ten values: position 0.1·9 and 0.9·9.
    expect(steps[0]?.whole).toMatchObject({ medianCents: 4.5, stringCount: 10 });
    expect(steps[0]?.whole.lowCents).toBeCloseTo(0.9, 12);
    expect(steps[0]?.whole.highCents).toBeCloseTo(8.1, 12);
  });

  it('shows the humidity of the visits that noted one, in order', () => {
    const visit = (visitedOn: string, humidityPct: number | null) => ({ visitedOn, humidityPct }) as Visit;
    const { humidity } = pitchCourse(
      drift([], []),
      [visit('2021-01-01', 40), visit('2020-01-01', 55), visit('2020-06-01', null)],
      [],
    );
    expect(humidity).toEqual([
      { on: '2020-01-01', humidityPct: 55 },
      { on: '2021-01-01', humidityPct: 40 },
    ]);
  });
});
