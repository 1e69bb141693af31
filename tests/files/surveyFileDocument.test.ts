import { describe, expect, it } from 'vitest';
import { surveyFileDocument } from '../../src/files/surveyFileDocument.ts';
import type { SurveyFindings } from '../../src/files/surveyFindings.ts';
import { plainReading } from '../survey/plainReading.ts';

const FILE = { file: 'a.wav', sampleRateHz: 48000, pitchStandardHz: 440 };
const MEASURED = { ...plainReading({ midi: 57 }), inharmonicityB: 2e-4, inharmonicityBStandardUncertainty: 1e-6 };
const UNMEASURED = plainReading({ midi: 58 });

const FINDINGS: SurveyFindings = {
  readings: [MEASURED, UNMEASURED],
  skippedMidi: [75],
  repeated: [{ midi: 57, keptIndex: 1, droppedIndexes: [0], repeatabilityCents: 0.12 }],
  pooledRepeatability: [{ register: 'middle', scatterCents: 0.1, repeatCount: 5, noteCount: 3 }],
  inharmonicity: {
    notes: [57, 58].map((midi) => ({
      midi,
      inharmonicityB: 2.1e-4,
      standardUncertainty: 2e-6,
      noteStandardUncertainty: 9e-6,
    })),
    woundSpread: 0.08,
    plainSpread: 0.03,
    standsOut: [{ midi: 61, stringPosition: 2, ratioToCurve: 1.4, departureInSigmas: 6 }],
  },
  life: {
    notes: [{ midi: 57, lifeTimeS: 8 }],
    spread: 0.3,
    weak: [{ midi: 62, stringPosition: 1, ratioToCurve: 0.3, departureInSigmas: -5 }],
  },
  warnings: ['late'],
};

describe('surveyFileDocument', () => {
  const document = surveyFileDocument(FILE, FINDINGS, ['early']);

  it('names skipped and repeated notes, says what strikes differ by, and joins the warnings', () => {
    expect(document).toMatchObject({
      ...FILE,
      skipped: ['D#5'],
      repeated: [{ note: 'A3', kept: 1, dropped: [0], repeatabilityCents: 0.12 }],
      pooledRepeatability: [{ register: 'middle', repeatabilityCents: 0.1, repeats: 5, notes: 3 }],
      warnings: ['early', 'late'],
    });
    expect(document.readings).toHaveLength(2);
  });

  it('gives B from the curve only where it was not measured, beside the measured one and never in its place', () => {
    expect(document.readings[0]).toMatchObject({ inharmonicityB: 2e-4, inharmonicityBFromCurve: null });
    expect(document.readings[1]).toMatchObject({
      inharmonicityB: null,
      inharmonicityBU: null,
      inharmonicityBFromCurve: 2.1e-4,
      inharmonicityBFromCurveU: 9e-6,
    });
  });

  it('puts every U right after the key whose uncertainty it is', () => {
    for (const keys of [document.readings[1]!, document.inharmonicityCurve!.notes[0]!].map(Object.keys))
      for (const [index, key] of keys.entries()) if (key.endsWith('U')) expect(keys[index - 1]).toBe(key.slice(0, -1));
  });

  it('gives both curves and the notes off them, with units in the keys', () => {
    expect(document.inharmonicityCurve).toEqual({
      notes: [
        { note: 'A3', inharmonicityB: 2.1e-4, inharmonicityBU: 2e-6 },
        { note: 'A#3', inharmonicityB: 2.1e-4, inharmonicityBU: 2e-6 },
      ],
      spreadPercent: { wound: 8, plain: 3 },
      standsOut: [{ note: 'C#4', string: 2, ratio: 1.4, sigmas: 6 }],
    });
    expect(document.lifeCurve).toEqual({
      notes: [{ note: 'A3', lifeTimeS: 8 }],
      spreadPercent: 30,
      weak: [{ note: 'D4', string: 1, ratio: 0.3, sigmas: -5 }],
    });
  });

  it('is null where there is no curve', () => {
    const { readings, ...rest } = surveyFileDocument(FILE, { ...FINDINGS, inharmonicity: null, life: null }, []);
    expect(rest).toMatchObject({ inharmonicityCurve: null, lifeCurve: null });
    expect(readings[1]).toMatchObject({ inharmonicityBFromCurve: null, inharmonicityBFromCurveU: null });
  });
});
