import { describe, expect, it } from 'vitest';
import { changeTable } from '../../../src/stability/drift/changeTable.ts';
import type { HistoryEvent, HistoryReading } from '../../../src/stability/drift/history.ts';

function reading(visitedOn: string, stage: HistoryReading['stage'], cents: number, midi = 60): HistoryReading {
  const climate = { humidityPct: null, temperatureC: null };
  return { visitedOn, stage, ...climate, midi, stringPosition: 2, cents, standardUncertaintyCents: 0.3 };
}

function event(happenedOn: string, kind: HistoryEvent['kind'], midi: number | null = null): HistoryEvent {
  return { happenedOn, kind, fromMidi: midi, toMidi: midi };
}

describe('changeTable', () => {
  it('compares what was left with what is next found', () => {
    const { changes, intervals } = changeTable(
      [
        reading('2020-01-01', 'as-found', -8),
        reading('2020-01-01', 'as-left', 1),
        reading('2020-07-01', 'as-found', -2),
      ],
      [],
    );
    expect(changes.map(({ cents }) => cents)).toEqual([-3]);
    expect(changes[0]?.varianceCents2).toBeCloseTo(2 * 0.3 ** 2, 12);
    expect(intervals[0]?.years).toBeCloseTo(182 / 365.25, 9);
  });

  it('starts from what was found where nobody tuned', () => {
    const rows = [reading('2020-01-01', 'as-found', -3), reading('2020-07-01', 'as-found', -5)];
    const { changes, intervals } = changeTable(rows, []);
    expect(changes.map(({ cents }) => cents)).toEqual([-2]);
    expect(intervals[0]?.hasBaseline).toBe(true);
  });

  it('knows no change since a tuning that nobody surveyed', () => {
    const rows = [reading('2020-01-01', 'as-found', -3), reading('2020-07-01', 'as-found', -5)];
    const { changes, intervals } = changeTable(rows, [event('2020-01-01', 'tuned')]);
    expect(changes).toEqual([]);
    expect(intervals[0]).toMatchObject({ hasBaseline: false, missingCount: 1 });
  });

  it('drops what a string did before it was replaced', () => {
    const dates = ['2020-01-01', '2020-07-01', '2021-01-01', '2021-07-01'];
    const rows = dates.flatMap((date, k) => [
      reading(date, 'as-found', -1 - k),
      reading(date, 'as-left', 0),
      reading(date, 'as-found', -1, 62),
      reading(date, 'as-left', 0, 62),
    ]);
    const { changes, strings } = changeTable(rows, [event('2020-09-01', 'string-replaced', 60)]);
    const of = (midi: number) => changes.filter(({ stringIndex }) => strings[stringIndex]?.midi === midi);
    expect(of(60).map(({ cents }) => cents)).toEqual([-4]);
    expect(of(62)).toHaveLength(3);
  });

  it('takes the mean of a string that was read twice in one survey', () => {
    const rows = [
      reading('2020-01-01', 'as-left', 0),
      reading('2020-07-01', 'as-found', -4),
      reading('2020-07-01', 'as-found', -2),
    ];
    expect(changeTable(rows, []).changes.map(({ cents }) => cents)).toEqual([-3]);
  });
});

describe('a tuning that nobody surveyed', () => {
  const LEFT = ['2018-01-01', '2018-07-01', '2019-01-01'];
  const surveyed = LEFT.flatMap((date) => [60, 61, 62, 63].map((midi) => reading(date, 'as-left', midi - 60, midi)));
  const later = [
    reading('2019-07-01', 'as-found', 0),
    reading('2020-01-01', 'as-found', -3),
    reading('2020-07-01', 'as-found', -3),
  ];
  const tunings = [event('2019-07-01', 'tuned'), event('2020-01-01', 'tuned')];
  const unread = changeTable([...surveyed, ...later], tunings);

  it('is followed by changes against where the string is usually left', () => {
    const of = unread.changes.filter(({ intervalIndex }) => unread.intervals[intervalIndex]?.hasBaseline === false);
    expect(of.map(({ cents }) => cents)).toEqual([-3, -3]);
  });

  it('tells the less, the more such intervals lean on the same place', () => {
    const variance = (table: typeof unread) => table.changes.at(-1)?.varianceCents2 ?? 0;
    const more = [reading('2021-01-01', 'as-found', -3), reading('2021-07-01', 'as-found', -3)];
    const longer = changeTable(
      [...surveyed, ...later, ...more],
      [...tunings, event('2020-07-01', 'tuned'), event('2021-01-01', 'tuned')],
    );
    expect(variance(longer)).toBeGreaterThan(1.2 * variance(unread));
    expect(variance(unread)).toBeGreaterThan(2 * 0.3 ** 2);
  });
});
