import { describe, expect, it } from 'vitest';
import { COMPASS_85, notesOf } from '../../src/piano/compass.ts';
import type { NoteReading } from '../../src/piano/reading.ts';
import { surveyCurves } from '../../src/survey/surveyCurves.ts';
import { typicalB, typicalDecayTimeS } from '../support/typicalPiano.ts';
import { plainReading } from './plainReading.ts';

function reading(midi: number, facts: Partial<NoteReading> = {}): NoteReading {
  const inharmonicityB = typicalB(midi);
  const lifeTimeS = typicalDecayTimeS(midi);
  const inharmonicityBStandardUncertainty = 0.01 * inharmonicityB;
  return { ...plainReading({ midi }), inharmonicityB, inharmonicityBStandardUncertainty, lifeTimeS, ...facts };
}

const READINGS = notesOf(COMPASS_85).map((midi) => reading(midi));
const replaced = (midi: number, facts: Partial<NoteReading>) =>
  READINGS.map((one) => (one.midi === midi ? { ...one, ...facts } : one));

describe('surveyCurves', () => {
  it('gives both curves at every note of the compass, whether it was measured or not', () => {
    const { inharmonicity, life } = surveyCurves(READINGS.slice(0, 60), COMPASS_85, null);
    expect(inharmonicity?.curve.map(({ midi }) => midi)).toEqual(notesOf(COMPASS_85));
    expect(life?.curve.map(({ midi }) => midi)).toEqual(notesOf(COMPASS_85));
    expect(inharmonicity?.notes).toHaveLength(60);
    for (const { midi, inharmonicityB } of inharmonicity!.curve.slice(0, 60))
      expect(Math.abs(inharmonicityB / typicalB(midi) - 1), `midi ${midi}`).toBeLessThan(0.05);
  });

  it('leaves out readings that cannot be used, and notes without the figure', () => {
    const bad = { isUsable: false, faults: ['too-noisy' as const], snrDb: 3, isClipped: false };
    const { inharmonicity, life } = surveyCurves(
      replaced(60, { quality: bad, inharmonicityB: 1e-2, lifeTimeS: 0.1 }),
      COMPASS_85,
      null,
    );
    expect(inharmonicity?.notes.some(({ midi }) => midi === 60)).toBe(false);
    expect(life?.notes.some(({ midi }) => midi === 60)).toBe(false);
    const without = surveyCurves(replaced(60, { inharmonicityB: null, lifeTimeS: null }), COMPASS_85, null);
    expect(without.inharmonicity?.notes).toHaveLength(84);
    expect(without.life?.notes).toHaveLength(84);
  });

  it('breaks where the instrument’s bass bridge ends, if that is known', () => {
    expect(surveyCurves(READINGS, COMPASS_85, 40).inharmonicity?.breakAfterMidi).toBe(40);
    expect(surveyCurves(READINGS, COMPASS_85, null).inharmonicity?.breakAfterMidi).toBeNull();
  });

  it('gives nulls for a survey of a few notes', () => {
    expect(surveyCurves(READINGS.slice(0, 5), COMPASS_85, null)).toEqual({ inharmonicity: null, life: null });
  });
});
