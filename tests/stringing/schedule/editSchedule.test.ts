import { expect, it } from 'vitest';
import { COMPASS_88 } from '../../../src/piano/compass.ts';
import { clearCells, fillDown, setCells } from '../../../src/stringing/schedule/editSchedule.ts';
import { emptySchedule, scheduleBreaks } from '../../../src/stringing/schedule/scheduleRows.ts';
import { plainRow, plainRows, woundRow } from './rows.ts';

const rows = emptySchedule(COMPASS_88);

it('emptySchedule has a row for each note of the compass', () => {
  expect(rows.map(({ midi }) => midi)).toEqual(Array.from({ length: 88 }, (_, index) => 21 + index));
});

it('setCells changes those cells, leaves every other row the same object and the old schedule as it was', () => {
  const before = structuredClone(rows);
  const after = setCells(rows, [{ midi: 60, change: { speakingLengthMm: 640, wireDiameterMm: 1.05 } }]);
  expect(after.find(({ midi }) => midi === 60)).toMatchObject({ speakingLengthMm: 640, wireDiameterMm: 1.05 });
  expect(after.filter((row, index) => row !== rows[index])).toHaveLength(1);
  expect(rows).toEqual(before);
});

it('setCells makes an interpolated figure a measured one, even of the same size', () => {
  const guessed = [plainRow(60, { speakingLengthMm: 640, interpolated: ['speakingLengthMm', 'wireDiameterMm'] })];
  const [row] = setCells(guessed, [{ midi: 60, change: { speakingLengthMm: 640 } }]);
  expect(row?.interpolated).toEqual(['wireDiameterMm']);
});

it('setCells adds a note at its place', () => {
  const after = setCells([plainRow(60), plainRow(62)], [{ midi: 61, change: { wireDiameterMm: 1 } }]);
  expect(after.map(({ midi }) => midi)).toEqual([60, 61, 62]);
});

it.each([
  ['upwards', 60, 63],
  ['downwards', 63, 60],
])('fillDown copies the first cell %s and nothing beside it', (_, fromMidi, toMidi) => {
  const start = plainRows(58, 65).map((row) => ({ ...row, wireDiameterMm: row.midi === fromMidi ? 0.9 : 1 }));
  const after = fillDown(start, ['wireDiameterMm'], { fromMidi, toMidi });
  expect(after.map(({ wireDiameterMm }) => wireDiameterMm)).toEqual([1, 1, 0.9, 0.9, 0.9, 0.9, 1, 1]);
  expect(after.map(({ speakingLengthMm }) => speakingLengthMm)).toEqual(start.map((row) => row.speakingLengthMm));
});

it('fillDown hands on that a figure was not measured', () => {
  const start = [plainRow(60, { wireDiameterMm: 1, interpolated: ['wireDiameterMm'] }), plainRow(61)];
  expect(fillDown(start, ['wireDiameterMm'], { fromMidi: 60, toMidi: 61 })[1]?.interpolated).toEqual([
    'wireDiameterMm',
  ]);
});

it('clearCells empties a block', () => {
  const after = clearCells(plainRows(60, 63), ['speakingLengthMm'], { fromMidi: 61, toMidi: 62 });
  expect(after.map(({ speakingLengthMm }) => speakingLengthMm === null)).toEqual([false, true, true, false]);
});

it('scheduleBreaks are where the bridge changes, where wound wire ends, and the struts', () => {
  const bass = [woundRow(40), woundRow(41)];
  const long = [woundRow(42, { bridge: 'long' }), ...plainRows(43, 60)];
  expect(scheduleBreaks([...bass, ...long], { strutsAfterMidi: [50] })).toEqual([41, 42, 50]);
});
