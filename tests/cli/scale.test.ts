import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runForJson, runStillpin } from './runStillpin.ts';

const SCHEDULE = fileURLToPath(new URL('../reference/stringing/schedule88.csv', import.meta.url));
const HEADER = 'note,strings,speaking_length_mm,wire_diameter_mm,core_diameter_mm,wrap,wire_grade\n';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'stillpin-'));
  writeFileSync(join(folder, 'short.csv'), `${HEADER}A4,3,400,1,,,\nA#4,3,,1,,,ASTM A228\n`);
  writeFileSync(join(folder, 'bad.csv'), `${HEADER}A4,3,400,1,,,\nB4,3,four,1,,,\n`);
  writeFileSync(join(folder, 'latin.csv'), Buffer.from([0x6e, 0xe9, 0x0a]));
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('scale --json', () => {
  it('gives every note and the totals of 88 notes', () => {
    const { status, stderr, json } = runForJson(['scale', SCHEDULE]);
    expect([status, stderr]).toEqual([0, '']);
    expect(json.notes).toHaveLength(88);
    // From tests/reference/stringing/scheduleTotals.py.
    expect(json.totalTensionN).toBeCloseTo(162278.324972, 1);
    expect(json.notes[48]).toMatchObject({
      note: 'A4',
      strings: 3,
      tensionN: 664.498,
      strengthTable: 'ASTM A228',
      noteTensionN: 1993.495,
      cautions: [],
    });
    expect(json.jumps).toMatchObject([{ fromNote: 'F#2', toNote: 'G2', atBreak: true }]);
  });

  it('has null and a caution for what is not known', () => {
    const { json } = runForJson(['scale', 'short.csv'], folder);
    expect(json.notes[0]).toMatchObject({ breakingPercent: null, strengthTable: null, tensionN: expect.any(Number) });
    expect(json.notes[0].cautions).toEqual([expect.stringMatching(/no strength table/)]);
    expect(json.notes[1]).toMatchObject({ tensionN: null, stressMpa: null, predictedB: null, noteTensionN: null });
    expect(json.total).toMatchObject({ strings: 3, unknownNotes: 1 });
  });
});

it('prints a table, the total and the cautions for people', () => {
  const { status, stdout } = runStillpin(['scale', SCHEDULE]);
  expect(status).toBe(0);
  expect(stdout).toMatch(/A4 +3 +plain +664\.5 +\d+\.\d +\d+\.\d +ASTM A228/);
  expect(stdout).toMatch(/all strings together, at A4 = 440 Hz: 162\.3 kN on 232 strings/);
  expect(stdout).toMatch(/C7 to C8: at 60 % to 66 % of the least strength/);
  expect(stdout).toMatch(/protect your eyes/);
});

it.each([
  [['scale', 'short.csv', 'bad.csv'], /one SCHEDULE\.csv/],
  [['scale', 'missing.csv'], /cannot read missing\.csv: there is no such file/],
  [['scale', 'bad.csv'], /bad\.csv line 3: B4: speaking_length_mm has to be a number or empty, got "four"/],
  [['scale', 'latin.csv'], /cannot read latin\.csv: it is not text in UTF-8/],
])('%s ends with status 2 and one line', (args, says) => {
  const { status, stdout, stderr } = runStillpin([...args, '--json'], folder);
  expect([status, stdout, stderr.trimEnd().split('\n').length]).toEqual([2, '', 1]);
  expect(stderr).toMatch(says);
});
