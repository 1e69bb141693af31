import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readScheduleCsv } from '../../src/files/scheduleCsv.ts';
import { nameToMidi } from '../../src/piano/note.ts';
import { analyseScale } from '../../src/stringing/scale/analyseScale.ts';
import { loadAtPitch } from '../../src/stringing/stringLoad.ts';
import { PUBLISHED_STRINGS } from './stringing/publishedStrings.ts';

it.each(PUBLISHED_STRINGS)('$note of $diameterMm mm pulls as published', (string) => {
  const { tensionN } = loadAtPitch(string, string.frequencyHz);
  // What the rounding of the published length (1 mm), tension (1 N) and diameter (0.001 mm) leaves open.
  const rounding = 1 / string.speakingLengthMm + 0.5 / string.tensionN + 0.001 / string.diameterMm;
  expect(Math.abs(tensionN / string.tensionN - 1)).toBeLessThan(rounding);
});

// Made by python3 tests/reference/stringing/scheduleTotals.py (Python 3.11), from textbook formulas and none of our code.
const TOTALS = [
  { pitchStandardHz: 440, bassN: 31456.221667, longN: 130822.103305, allN: 162278.324972 },
  { pitchStandardHz: 435, bassN: 30745.36955, longN: 127865.767034, allN: 158611.136584 },
];
const SINGLE_STRINGS = [
  ['A0', 1010.956025693],
  ['G1', 940.47888717],
  ['G2', 476.898941813],
  ['A4', 664.498332613],
  ['C8', 701.826797283],
] as const;

const schedule = readScheduleCsv(readFileSync(new URL('stringing/schedule88.csv', import.meta.url), 'utf8'));
const rows = schedule.ok ? schedule.rows : [];

it.each(TOTALS)(
  '88 notes at $pitchStandardHz Hz pull as worked out apart',
  ({ pitchStandardHz, bassN, longN, allN }) => {
    const scale = analyseScale(rows, { pitchStandardHz });
    expect(scale.total?.stringCount).toBe(232);
    expect(scale.sections.map(({ fromMidi, toMidi }) => [fromMidi, toMidi])).toEqual([
      [21, 42],
      [43, 108],
    ]);
    const found = [...scale.sections.map(({ tensionN }) => tensionN), scale.total?.tensionN ?? 0];
    for (const [index, wanted] of [bassN, longN, allN].entries())
      expect((found[index] ?? 0) / wanted).toBeCloseTo(1, 10);
  },
);

it.each(SINGLE_STRINGS)('one string of %s pulls as worked out apart', (note, wantedN) => {
  const notes = analyseScale(rows, { pitchStandardHz: 440 }).notes;
  const tensionN = notes.find(({ midi }) => midi === nameToMidi(note))?.tensionN ?? 0;
  expect(tensionN / wantedN).toBeCloseTo(1, 10);
});
