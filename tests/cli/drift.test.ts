import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { midiToName } from '../../src/piano/note.ts';
import { simulateHistory } from '../../src/stability/simulateHistory.ts';
import { usualPlan } from '../../src/stability/simulation/historyPlan.ts';
import { seededRandom } from '../support/seededRandom.ts';
import { runForJson, runStillpin } from './runStillpin.ts';

const SLIP = { midi: 72, stringPosition: 2, centsPerYear: -3, fromDate: '2015-03-01' } as const;
const FAULT = { on: '2017-03-01', stage: 'as-found', midi: 60, stringPosition: 2, cents: 9 } as const;
const HEADER = 'visit_date,stage,rh_percent,temp_c,note,string,cents,cents_u';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'stillpin-drift-'));
  const { readings } = simulateHistory(usualPlan({ slips: [SLIP], faults: [FAULT] }), seededRandom(3));
  const lines = readings.map((row) =>
    [
      row.visitedOn,
      row.stage,
      row.humidityPct,
      row.temperatureC,
      midiToName(row.midi),
      row.stringPosition,
      row.cents.toFixed(3),
      row.standardUncertaintyCents,
    ].join(','),
  );
  writeFileSync(join(folder, 'history.csv'), [HEADER, ...lines].join('\n'));
  writeFileSync(join(folder, 'header.csv'), `${HEADER}\n`);
  writeFileSync(join(folder, 'wrong.csv'), `${HEADER}\n2021-04-01,as-found,,,H4,2,0,\n`);
  writeFileSync(join(folder, 'instrument.json'), '{"compass": "A0-C8", "bassBridgeTop": "G2", "strutsAfter": ["G2"]}');
  writeFileSync(join(folder, 'events.csv'), 'date,kind,from_note,to_note,remark\n2021-05-01,pin-replaced,C5,C5,\n');
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('drift --json', () => {
  it('gives one document with all of its parts and the pin that slips', () => {
    const { status, json } = runForJson(['drift', 'history.csv', '--instrument', 'instrument.json'], folder);
    expect(status).toBe(0);
    expect(Object.keys(json)).toEqual(
      expect.arrayContaining(['intervals', 'humidity', 'settling', 'pins', 'zones', 'outliers', 'verdict']),
    );
    expect(json.intervals).toHaveLength(12);
    expect(json.intervals[0]).toMatchObject({
      from: '2015-03-01',
      years: expect.any(Number),
      missing: expect.any(Number),
    });
    expect(json.humidity.centsPerPercentRh).toHaveLength(88);
    expect(json.pins).toHaveLength(88);
    const flagged = json.pins.filter((pin: { flagged: boolean }) => pin.flagged);
    expect(flagged.map((pin: { note: string; string: number }) => [pin.note, pin.string])).toEqual([['C5', 2]]);
    expect(flagged[0].slipCentsPerYear).toBeLessThan(-2);
    expect(json.outliers).toContainEqual(expect.objectContaining({ visitDate: '2017-03-01', note: 'C4' }));
    expect(json.settling).toBeNull();
    expect(json.verdict.state).toBe('giving way');
  });

  it('forgets the slip of a pin that an event says was replaced', () => {
    const { json } = runForJson(['drift', 'history.csv', '--events', 'events.csv'], folder);
    const pin = json.pins.find(({ note }: { note: string }) => note === 'C5');
    expect(pin).toMatchObject({ flagged: false, slipCentsPerYear: null, probability: null });
    expect(json.verdict.state).toBe('holding');
  });

  it('has no evidence in a file of no readings', () => {
    const { status, json } = runForJson(['drift', 'header.csv'], folder);
    expect(status).toBe(0);
    expect(json.verdict.state).toBe('not enough evidence');
  });
});

it('drift prints the verdict and the pin for people', () => {
  const { stdout, status } = runStillpin(['drift', 'history.csv'], folder);
  expect(status).toBe(0);
  expect(stdout).toMatch(/^giving way\n/);
  expect(stdout).toMatch(/C5 .*-[23]\.\d+ ± 0\.\d+.*slips/);
});

it.each([
  [['drift'], /needs one HISTORY\.csv/],
  [['drift', 'missing.csv'], /cannot read missing\.csv: there is no such file/],
  [['drift', 'wrong.csv'], /wrong\.csv.*line 2: note.*"H4"/],
  [['drift', 'history.csv', '--instrument', 'history.csv'], /history\.csv.*JSON/],
  [['drift', 'history.csv', '--events', 'history.csv'], /history\.csv.*line 1.*date/],
] as const)('drift refuses %j in one line', (args, says) => {
  const { status, stderr, stdout } = runStillpin(args, folder);
  expect(status).toBe(2);
  expect(stdout).toBe('');
  expect(stderr.trim().split('\n')).toHaveLength(1);
  expect(stderr).toMatch(says);
});
