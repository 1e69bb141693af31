import { describe, expect, it } from 'vitest';
import { humiditySentences } from '../../../src/screens/stability/humidityWords.ts';
import { pitchChart, workMarks } from '../../../src/screens/stability/lifeLineChart.ts';
import {
  levelMeaning,
  mapColumns,
  mapSheet,
  shownIntervals,
  zoneBrackets,
} from '../../../src/screens/stability/mapColumns.ts';
import { notablePins, pinSheet, pinsInOrder } from '../../../src/screens/stability/pinRows.ts';
import { readHumidity } from '../../../src/screens/stability/readHumidity.ts';
import { wholeCurve } from '../../../src/screens/stability/spanSeries.ts';
import { stringList, stringNamer } from '../../../src/screens/stability/stringNames.ts';
import type { StringRow } from '../../../src/stability/driftViews.ts';
import type { LifeLineVisit } from '../../../src/stability/lifeLine.ts';
import { timeOf, timeScale } from '../../../src/ui/charts/timeScale.ts';
import { exampleDrift, pin } from './exampleDrift.ts';

const cell = (on: string, cents: number) => ({ on, cents, standardUncertaintyCents: 1 });
const ROWS: StringRow[] = [
  { midi: 60, stringPosition: 2, cells: [cell('2021-01-01', -1.5), cell('2022-01-01', -6)] },
  { midi: 61, stringPosition: 2, cells: [null, cell('2022-01-01', 3)] },
];
const INSTRUMENT = { compass: { lowestMidi: 60, highestMidi: 61 }, bassBridgeTopMidi: null, strutsAfterMidi: [60] };

describe('the map', () => {
  const drift = exampleDrift({ pins: [pin(60, { isFlagged: true }), pin(61)] });

  it('draws what lies within two standard uncertainties as nought, and nothing where nothing was read', () => {
    const columns = mapColumns(ROWS, [0, 1], drift, INSTRUMENT);
    expect(columns.map((column) => column.values)).toEqual([
      [0, -6],
      [null, 3],
    ]);
  });

  it('flags pins, tells them to screen readers, and marks where the row of pins breaks', () => {
    const [first, second] = mapColumns(ROWS, [0, 1], drift, INSTRUMENT);
    expect([first?.isFlagged, second?.isFlagged]).toEqual([true, false]);
    expect(first?.name).toMatch(/^C4, .*−6.*flagged$/);
    expect([first?.endsSection, second?.endsSection]).toEqual([true, false]);
  });

  it('leaves out visits that tell nothing, and brackets a zone by the strings that it has', () => {
    expect(shownIntervals([{ ...ROWS[1]! }], 2)).toEqual([1]);
    const zones = [
      {
        fromMidi: 61,
        toMidi: 70,
        centsPerYear: -3,
        standardUncertainty: 1,
        probability: 1,
        isAccelerating: false,
        fromInterval: 0,
      },
    ];
    expect(zoneBrackets({ zones }, ROWS)).toEqual([{ fromKey: '61 2', toKey: '61 2' }]);
  });

  it('says what its classes hold', () => {
    expect(levelMeaning(-1, 2)).toBe('−3 to −1');
    expect(levelMeaning(3, 1)).toBe('+2.5 or sharper');
  });

  it('gives its numbers with dates and uncertainties', () => {
    expect(mapSheet(ROWS, drift).rows).toContainEqual(['C#4', 61, 2, '2021-01-01', '2022-01-01', 3, 1]);
  });
});

describe('pins', () => {
  const pins = [
    pin(62),
    pin(60, { probability: 0.5 }),
    pin(61, { isFlagged: true, probability: 0.9 }),
    pin(59, { probability: null }),
  ];

  it('stand flagged first, then by probability, the unknown ones last', () => {
    expect(pinsInOrder(pins).map(({ midi }) => midi)).toEqual([61, 60, 62, 59]);
    expect(notablePins(pins).map(({ midi }) => midi)).toEqual([61, 60]);
  });

  it('keep their judgement in the sheet', () => {
    expect(pinSheet(pins).rows.map((row) => row.at(-1))).toEqual(['flagged', 'doubtful', 'steady', 'unknown']);
  });

  it('are named by their note where no other string of a note is read, and with their place otherwise', () => {
    const centre = { midi: 60, stringPosition: 2 as const };
    const left = { midi: 60, stringPosition: 1 as const };
    expect(stringNamer([centre])(centre)).toBe('C4');
    expect(stringNamer([centre, left])(centre)).toBe('C4 centre string');
    expect(stringList([centre, left], [centre, left])).toBe('C4 left string, C4 centre string');
  });
});

describe('the life line', () => {
  const pitch = (cents: number) => ({ cents, standardUncertaintyCents: 0.5, stringCount: 80 });
  const visit = (visitedOn: string, found: number | null, left: number | null): LifeLineVisit => ({
    visitedOn,
    humidityPct: null,
    temperatureC: null,
    asFound: found === null ? null : pitch(found),
    asLeft: left === null ? null : pitch(left),
  });
  const visits = [visit('2020-01-01', -5, 0), visit('2020-07-01', 4, null), visit('2021-01-01', 1, 0)];
  const time = timeScale(
    visits.map(({ visitedOn }) => visitedOn),
    6,
  );

  it('joins what was left to what was found next; a visit that only found it left it so', () => {
    const links = pitchChart(visits, time, []).links?.map((link) => link.map(({ y }) => y));
    expect(links).toEqual([
      [0, 4],
      [4, 1],
    ]);
  });

  it('numbers work in the order of its dates and leaves out what lies before its first year', () => {
    const work = (happenedOn: string) => ({ happenedOn, kind: 'restrung' as const, fromMidi: null, toMidi: null });
    const events = ['2020-09-01', '2001-01-01'].map((date) => ({
      ...work(date),
      id: date,
      instrumentId: 'i',
      remark: '',
    }));
    expect(workMarks(events as never, time)).toEqual([{ x: timeOf('2020-09-01'), label: '2' }]);
  });
});

it('the part of season and whole instrument breaks at the end of the bass bridge', () => {
  const change = (midi: number, wholeCents: number) => ({
    midi,
    stringPosition: 2 as const,
    cents: 0,
    wholeCents,
    wholeUncertaintyCents: 0.5,
    ownCents: 0,
    ownUncertaintyCents: 0.3,
    intervalCount: 1,
  });
  const { stretches } = wholeCurve([change(42, 1), change(43, 2), change(44, 5)], 43);
  expect(stretches.map((notes) => notes.map(({ y }) => y))).toEqual([[1, 2], [5]]);
  expect(stretches[1]?.[0]).toMatchObject({ low: 4, high: 6 });
});

it('unisons are said to be moved apart only where both outer strings of many notes were read', () => {
  const strings = Array.from({ length: 12 }, (_, index) =>
    [1, 3].map((position) => ({
      midi: 50 + index,
      stringPosition: position as 1 | 3,
      centsPerPct: position === 3 ? 1 : 0.75,
      standardUncertainty: 0.1,
    })),
  ).flat();
  expect(humiditySentences(strings)[1]).toContain('+0.25');
  expect(humiditySentences(strings.filter((string) => string.stringPosition === 1))).toHaveLength(1);
});

it.each([
  ['45', 45],
  [' 44,5 ', 44.5],
  ['5', null],
  ['95', null],
  ['dry', null],
])('the typed humidity %j is %j', (text, value) => {
  expect(readHumidity(text)).toBe(value);
});
