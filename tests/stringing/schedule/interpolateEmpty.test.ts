import { expect, it } from 'vitest';
import { interpolateEmpty } from '../../../src/stringing/schedule/interpolateEmpty.ts';
import { plainRow, plainRows, straightLengthMm, woundRow } from './rows.ts';

const withGap = (from: number, to: number) =>
  plainRows(50, 70).map((row) => (row.midi >= from && row.midi <= to ? { ...row, speakingLengthMm: null } : row));

it('takes lengths straight in their logarithm, marks them, and leaves what was measured', () => {
  const after = interpolateEmpty(withGap(55, 60));
  expect(after.map(({ midi }) => midi)).toEqual(plainRows(50, 70).map(({ midi }) => midi));
  for (const { midi, speakingLengthMm, interpolated } of after) {
    const isGap = midi >= 55 && midi <= 60;
    expect(speakingLengthMm).toBeCloseTo(straightLengthMm(midi), isGap ? 0.9 : 9);
    expect(interpolated).toEqual(isGap ? ['speakingLengthMm'] : []);
  }
});

it('leaves what lies beyond the last measured note, or across a break, empty', () => {
  expect(
    interpolateEmpty(withGap(68, 70))
      .slice(-3)
      .map((row) => row.speakingLengthMm),
  ).toEqual([null, null, null]);
  const atBreak = interpolateEmpty(withGap(55, 60), [57]);
  expect(atBreak.filter((row) => row.speakingLengthMm === null).map(({ midi }) => midi)).toEqual([
    55, 56, 57, 58, 59, 60,
  ]);
});

it('never goes from wound wire to plain', () => {
  const rows = [woundRow(40), { ...woundRow(41), wireDiameterMm: null }, plainRow(42, { wireDiameterMm: 1 })];
  expect(interpolateEmpty(rows, [])[1]?.wireDiameterMm).toBeNull();
});

it('fills a diameter with a size of the series that both neighbours have', () => {
  const [, between] = interpolateEmpty([
    plainRow(60, { wireDiameterMm: 1.05 }),
    plainRow(61),
    plainRow(64, { wireDiameterMm: 1 }),
  ]);
  expect([1.05, 1.025, 1]).toContain(between?.wireDiameterMm);
  const same = interpolateEmpty([
    plainRow(60, { wireDiameterMm: 1 }),
    plainRow(61),
    plainRow(62, { wireDiameterMm: 1 }),
  ]);
  expect(same[1]).toMatchObject({ wireDiameterMm: 1, interpolated: ['wireDiameterMm'] });
});

it('fills words and string counts only where both neighbours agree', () => {
  const rows = [plainRow(60), plainRow(61, { stringCount: null, wireGrade: null }), plainRow(62, { wireGrade: 'SM' })];
  expect(interpolateEmpty(rows)[1]).toMatchObject({ stringCount: 3, wireGrade: null, interpolated: ['stringCount'] });
});

it('makes interpolated figures anew when a measured one comes between', () => {
  const once = interpolateEmpty(withGap(55, 60));
  const measured = once.map((row) => (row.midi === 57 ? { ...row, speakingLengthMm: 700, interpolated: [] } : row));
  const again = interpolateEmpty(measured);
  expect(again.find(({ midi }) => midi === 57)?.interpolated).toEqual([]);
  expect(again.find(({ midi }) => midi === 56)?.speakingLengthMm).not.toBe(
    once.find(({ midi }) => midi === 56)?.speakingLengthMm,
  );
});
