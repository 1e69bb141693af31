import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writeWave } from '../../src/files/audio/writeWave.ts';
import type { SurveyFileDocument } from '../../src/files/surveyFileDocument.ts';
import { hzToCents } from '../../src/piano/cents.ts';
import type { SurveyTruthRow } from '../reference/sampleAudio.ts';
import { synthesizeSurvey } from '../support/syntheticSurvey.ts';
import { typicalB, typicalDecayTimeS } from '../support/typicalPiano.ts';
import { type CommandResult, runForJson, runStillpin, SAMPLE_AUDIO } from './runStillpin.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'stillpin-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

type SurveyResult = CommandResult & { readonly json: SurveyFileDocument };

describe('a recording of 88 notes', () => {
  const truth: SurveyTruthRow[] = JSON.parse(readFileSync(join(SAMPLE_AUDIO, 'survey-88-notes.truth.json'), 'utf8'));
  let result: SurveyResult;
  beforeAll(() => {
    result = runForJson(['survey', 'survey-88-notes.wav', '--string', '2']);
  }, 300_000);

  it('gives one document about the whole recording', () => {
    expect(result.status).toBe(0);
    expect(result.json).toMatchObject({
      file: 'survey-88-notes.wav',
      sampleRateHz: 22050,
      pitchStandardHz: 440,
      warnings: [],
      skipped: [],
      repeated: [],
    });
  });

  it('names every note rightly and invents none', () => {
    expect(result.json.readings.map(({ note }) => note)).toEqual(truth.map(({ note }) => note));
    expect(result.json.readings.every(({ string }) => string === 2)).toBe(true);
  });

  it('hears each strike when it came', () => {
    const lateS = result.json.readings.map(({ onsetS }, index) => Math.abs((onsetS ?? 999) - truth[index]!.onsetS));
    expect(Math.max(...lateS)).toBeLessThan(0.1);
  });

  it('measures partial 1 within 0.3 cents for 95 % of the notes, and none worse than 3 cents', () => {
    const errorsCents = result.json.readings
      .map(({ partial1Hz }, index) => Math.abs(hzToCents(partial1Hz ?? 1, truth[index]!.partial1Hz)))
      .sort((one, other) => one - other);
    expect(errorsCents[Math.ceil(0.95 * truth.length) - 1]).toBeLessThan(0.3);
    expect(errorsCents.at(-1)).toBeLessThan(3);
  });

  it('gives B from the curve where it could not be measured, and nowhere else', () => {
    const fromCurve = result.json.readings.map((reading, index) => ({
      ...reading,
      trueB: truth[index]!.inharmonicityB,
    }));
    for (const { note, inharmonicityB, inharmonicityBFromCurve, inharmonicityBFromCurveU, trueB } of fromCurve) {
      expect(inharmonicityBFromCurve === null, note).toBe(inharmonicityB !== null);
      if (inharmonicityBFromCurve !== null)
        expect(Math.abs(inharmonicityBFromCurve - trueB) / inharmonicityBFromCurveU!, note).toBeLessThan(3);
    }
    expect(fromCurve.at(-1)?.inharmonicityBFromCurve).toBeGreaterThan(0.01);
    expect(result.json.inharmonicityCurve?.standsOut).toEqual([]);
    expect(result.json.lifeCurve?.weak).toEqual([]);
  });

  it('measures B within 5 % from C2 to C6, wherever it measures it', () => {
    const middle = result.json.readings
      .map(({ inharmonicityB, midi }, index) => ({ midi, inharmonicityB, trueB: truth[index]!.inharmonicityB }))
      .filter(({ midi }) => midi >= 36 && midi <= 84);
    for (const { midi, inharmonicityB, trueB } of middle)
      if (inharmonicityB !== null) expect(Math.abs(inharmonicityB / trueB - 1), `MIDI ${midi}`).toBeLessThan(0.05);
    expect(middle.filter(({ inharmonicityB }) => inharmonicityB !== null).length).toBeGreaterThan(45);
  });
});

describe('a recording of twelve notes, two of which are not like the rest', () => {
  const STIFF_MIDI = 61;
  const DEAD_MIDI = 57;
  beforeAll(() => {
    const notes = Array.from({ length: 12 }, (_, index) => {
      const midi = 53 + index;
      const inharmonicityB = typicalB(midi) * (midi === STIFF_MIDI ? 1.8 : 1);
      const decayTimeS = typicalDecayTimeS(midi) * (midi === DEAD_MIDI ? 0.3 : 1);
      return { strings: [{ midi, inharmonicityB, decayTimeS }], holdS: 1.2 };
    });
    const { samples } = synthesizeSurvey({ notes, sampleRateHz: 22050, gapS: 0.3, noiseDbfs: -70, seed: 5 });
    writeFileSync(join(folder, 'twelve.wav'), writeWave(samples, 22050, '16-bit'));
  });

  it('names the one whose inharmonicity stands out and the weak one, and gives both curves', () => {
    const { json }: SurveyResult = runForJson(['survey', 'twelve.wav', '--compass', 'F3-E4'], folder);
    expect(json.inharmonicityCurve?.standsOut.map(({ note }) => note)).toEqual(['C#4']);
    expect(json.inharmonicityCurve?.standsOut[0]?.ratio).toBeCloseTo(1.8, 0);
    expect(json.lifeCurve?.weak.map(({ note }) => note)).toEqual(['A3']);
    expect(json.inharmonicityCurve?.notes).toHaveLength(12);
    for (const [index, { note, inharmonicityB }] of json.inharmonicityCurve!.notes.entries())
      expect(Math.abs(inharmonicityB! / typicalB(53 + index) - 1), note).toBeLessThan(0.1);
  });

  it('says so in one line each below the table', () => {
    const { stdout } = runStillpin(['survey', 'twelve.wav', '--compass', 'F3-E4'], folder);
    expect(stdout).toMatch(/^inharmonicity stands out from the rest: C#4 \(1\.\d+ times\)$/m);
    expect(stdout).toMatch(/^weak, living less than half as long as notes around: A3 \(0\.\d+ times\)$/m);
  });
});

describe('a short survey with a skipped and a repeated note', () => {
  let json: SurveyFileDocument;
  beforeAll(() => {
    const notes = [60, 61, 61, 63].map((midi) => ({ strings: [{ midi }], holdS: 1.6 }));
    const { samples } = synthesizeSurvey({ notes, sampleRateHz: 44100, gapS: 0.4, noiseDbfs: -65, seed: 12 });
    writeFileSync(join(folder, 'four.wav'), writeWave(samples, 44100, '16-bit'));
    json = runForJson(['survey', 'four.wav', '--compass', 'C4-E4'], folder).json;
  });

  it('says which note is missing and which take of the repeated one is kept', () => {
    expect(json.readings.map(({ note }) => note)).toEqual(['C4', 'C#4', 'C#4', 'D#4']);
    expect(json.skipped).toEqual(['D4', 'E4']);
    expect(json.repeated).toHaveLength(1);
    const [repeat] = json.repeated;
    expect(repeat?.note).toBe('C#4');
    expect([repeat?.kept, ...(repeat?.dropped ?? [])].sort()).toEqual([1, 2]);
  });

  it('says what its two strikes differ by, and gives no curve of so few notes', () => {
    const [repeat] = json.repeated;
    // The synthetic string is struck twice at exactly the same frequency.
    expect(repeat?.repeatabilityCents).toBeLessThan(0.1);
    expect(json.readings[repeat!.kept]!.centsU).toBeGreaterThanOrEqual(repeat!.repeatabilityCents!);
    expect(json).toMatchObject({ inharmonicityCurve: null, lifeCurve: null, pooledRepeatability: [] });
  });

  it('says the same in the table', () => {
    const { status, stdout, stderr } = runStillpin(['survey', 'four.wav', '--compass', 'C4-E4'], folder);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toMatch(/4 takes, 2 notes of the compass not heard/);
    expect(stdout).toMatch(/not heard: D4 E4/);
    expect(stdout).toMatch(/not kept/);
  });
});

it('a recording without a note gives no readings, a warning, and status 0', () => {
  writeFileSync(join(folder, 'silence.wav'), writeWave(new Float32Array(96000), 48000, '16-bit'));
  const { status, json }: SurveyResult = runForJson(['survey', 'silence.wav', '--compass', 'A0-C1'], folder);
  expect(status).toBe(0);
  expect(json).toMatchObject({ readings: [], repeated: [], skipped: ['A0', 'A#0', 'B0', 'C1'] });
  expect(json.warnings).toEqual([expect.stringMatching(/no note/i)]);
});
