import { describe, expect, it } from 'vitest';
import {
  fitInharmonicityCurve,
  inharmonicityAt,
  type MeasuredInharmonicity,
} from '../../../src/analysis/compass/inharmonicityCurve.ts';
import { fitInharmonicity } from '../../../src/analysis/tone/fitInharmonicity.ts';
import { rootMeanSquare } from '../../support/statistics.ts';
import { BASS_TOP_MIDI, type InventedScale, measuredScale, trueLogB, withFactors } from './inventedScale.ts';

const SEEDS = Array.from({ length: 25 }, (_, index) => index + 1);

function errorsInSigmas(scale: InventedScale, midis: readonly number[], topMidi: number | null = null): number[] {
  const curve = fitInharmonicityCurve(measuredScale(scale), topMidi)!;
  return midis.map((midi) => {
    const { inharmonicityB, standardUncertainty } = inharmonicityAt(curve, midi);
    return (Math.log(inharmonicityB) - trueLogB(scale, midi)) / (standardUncertainty / inharmonicityB);
  });
}

const ALONG = [24, 36, 48, 60, 72, 84, 96];
const standing = (notes: Parameters<typeof fitInharmonicityCurve>[0], topMidi: number | null = null) =>
  fitInharmonicityCurve(notes, topMidi)!
    .notes.filter(({ standsOut }) => standsOut)
    .map(({ midi }) => midi);

describe('the curve of B', () => {
  const instruments: [string, Omit<InventedScale, 'seed'>][] = [
    ['an average piano', {}],
    ['a large grand with a soft bass', { treble: -0.15, bass: -0.9 }],
    ['a small upright with a stiff bass', { treble: 0.2, bass: 0.7 }],
    ['a scale that waves about its asymptotes', { bass: -0.4, wave: 0.1 }],
    ['every third note only', { bass: -0.5, everyNotes: 3 }],
  ];

  it.each(instruments)('is found within 8 %% all along the compass: %s', (_, scale) => {
    for (const seed of SEEDS.slice(0, 8)) {
      const own = { ...scale, seed };
      const curve = fitInharmonicityCurve(measuredScale(own))!;
      const errors = ALONG.map((midi) => Math.log(inharmonicityAt(curve, midi).inharmonicityB) - trueLogB(own, midi));
      expect(Math.max(...errors.map(Math.abs)), `seed ${seed}`).toBeLessThan(0.08);
    }
  });

  // 175 figures, seven from each instrument and not quite independent: a right figure lies within 1 ± 0.15.
  it('states uncertainties as large as its errors are', () => {
    const plain = SEEDS.flatMap((seed) => errorsInSigmas({ seed, treble: 0.1, bass: -0.5 }, ALONG));
    expect(rootMeanSquare(plain)).toBeGreaterThan(0.7);
    expect(rootMeanSquare(plain)).toBeLessThan(1.2);
    const waving = SEEDS.flatMap((seed) => errorsInSigmas({ seed, bass: -0.5, wave: 0.1 }, ALONG));
    expect(rootMeanSquare(waving)).toBeLessThan(1.35);
  });

  it('finds the spread between notes, with the measuring errors taken off', () => {
    for (const spread of [0.02, 0.08]) {
      const found = SEEDS.slice(0, 10).map(
        (seed) => fitInharmonicityCurve(measuredScale({ seed, spread }))!.plainSpread,
      );
      expect(rootMeanSquare(found)! / spread).toBeGreaterThan(0.85);
      expect(rootMeanSquare(found)! / spread).toBeLessThan(1.2);
    }
  });

  it('lets wound strings scatter more than plain ones without losing the plain ones’ figure', () => {
    const bass = measuredScale({ seed: 5, spread: 0.12, toMidi: 40 });
    const rest = measuredScale({ seed: 6, spread: 0.02, fromMidi: 41 });
    const curve = fitInharmonicityCurve([...bass, ...rest], BASS_TOP_MIDI)!;
    expect(curve.woundSpread).toBeGreaterThan(2 * curve.plainSpread);
    expect(curve.plainSpread).toBeLessThan(0.035);
  });

  it('breaks between the bridges where their end is known', () => {
    const scale = { seed: 9, bass: -0.4, bassStep: -0.35 };
    const curve = fitInharmonicityCurve(measuredScale(scale), BASS_TOP_MIDI)!;
    for (const midi of [BASS_TOP_MIDI - 1, BASS_TOP_MIDI, BASS_TOP_MIDI + 1, BASS_TOP_MIDI + 2])
      expect(Math.log(inharmonicityAt(curve, midi).inharmonicityB), `midi ${midi}`).toBeCloseTo(
        trueLogB(scale, midi),
        1,
      );
    expect(curve.notes.filter(({ standsOut }) => standsOut)).toEqual([]);
  });

  it('leaves the break out where one side of it has next to no notes', () => {
    const curve = fitInharmonicityCurve(measuredScale({ seed: 2, fromMidi: 39 }), BASS_TOP_MIDI)!;
    expect(curve.bassBridgeTopMidi).toBeNull();
  });

  it('knows less where there are no notes, and a single note less than the curve', () => {
    const curve = fitInharmonicityCurve(measuredScale({ seed: 3, fromMidi: 50, toMidi: 80 }))!;
    const relative = (midi: number) => {
      const { inharmonicityB, standardUncertainty } = inharmonicityAt(curve, midi);
      return standardUncertainty / inharmonicityB;
    };
    expect(relative(65)).toBeLessThan(0.03);
    expect(relative(100)).toBeGreaterThan(3 * relative(65));
    expect(relative(25)).toBeGreaterThan(0.3);
    const { inharmonicityB, standardUncertainty, noteStandardUncertainty } = inharmonicityAt(curve, 65);
    expect(noteStandardUncertainty).toBeCloseTo(
      Math.hypot(standardUncertainty, curve.plainSpread * inharmonicityB),
      12,
    );
  });

  it('is null with fewer than eight notes, however often they were taken', () => {
    const seven = measuredScale({ seed: 1, fromMidi: 60, toMidi: 66 });
    expect(fitInharmonicityCurve([...seven, ...seven])).toBeNull();
    expect(fitInharmonicityCurve([])).toBeNull();
    expect(fitInharmonicityCurve(measuredScale({ seed: 1, fromMidi: 60, toMidi: 67 }))).not.toBeNull();
  });

  it.each([0, -1e-4, Number.NaN])('refuses a B of %s and says at which note', (inharmonicityB) => {
    const notes = measuredScale({ seed: 1 }).map((note) => (note.midi === 50 ? { ...note, inharmonicityB } : note));
    expect(() => fitInharmonicityCurve(notes)).toThrow(/inharmonicityB.*50/);
  });
});

describe('notes that stand out', () => {
  it('are rare where nothing is wrong: at most one instrument in ten has any', () => {
    const alarmed = SEEDS.filter((seed) => standing(measuredScale({ seed, bass: -0.5, wave: 0.08 })).length > 0);
    expect(alarmed.length).toBeLessThanOrEqual(2);
  });

  it('are found, and do not bend the curve, where one note in ten is wrong by a factor of two', () => {
    for (const seed of SEEDS.slice(0, 8)) {
      const scale = { seed, bass: -0.5, wave: 0.08 };
      const wrong = withFactors(measuredScale(scale), (midi) => (midi % 10 === 3 ? 2 : 1));
      expect(standing(wrong), `seed ${seed}`).toEqual(expect.arrayContaining([23, 33, 43, 53, 63, 73, 83, 93]));
      const curve = fitInharmonicityCurve(wrong)!;
      for (const midi of ALONG)
        expect(Math.abs(Math.log(inharmonicityAt(curve, midi).inharmonicityB) - trueLogB(scale, midi))).toBeLessThan(
          0.1,
        );
    }
  });

  // B = π²·(E/ρ)·d²/(64·f²·L⁴), after H. Fletcher 1964: at the same frequency and length B goes with the square of the diameter.
  it('include a string with wire one gauge too thick, where the neighbours follow their scale closely', () => {
    const stiffness = (diameterMm: number, frequencyHz: number, lengthMm: number) =>
      (Math.PI ** 2 * (2e11 / 7850) * (diameterMm / 1000) ** 2) / (64 * frequencyHz ** 2 * (lengthMm / 1000) ** 4);
    const oneGaugeUp = stiffness(1.0, 349.2, 600) / stiffness(0.95, 349.2, 600);
    expect(oneGaugeUp).toBeCloseTo((1.0 / 0.95) ** 2, 12);
    const found = SEEDS.filter((seed) => {
      const notes = measuredScale({ seed, bass: -0.4, wave: 0.08, spread: 0.015 });
      return standing(withFactors(notes, (midi) => (midi === 65 ? oneGaugeUp : 1))).includes(65);
    });
    expect(found.length).toBeGreaterThan(20);
  });

  it('are none that depart by less than half a gauge of wire, however sure', () => {
    const notes = measuredScale({ seed: 4, spread: 0.001, bass: -0.4 });
    const curve = fitInharmonicityCurve(withFactors(notes, (midi) => (midi === 60 ? 1.04 : 1)))!;
    const note = curve.notes.find(({ midi }) => midi === 60)!;
    expect(note.departureInSigmas).toBeGreaterThan(4);
    expect(note.standsOut).toBe(false);
  });

  it.each([
    ['one too high, so that B comes out large', 1],
    ['one too low, so that the fit of B ends at its stop', -1],
  ])('include a bass note whose partials were numbered %s', (_, shift) => {
    const notes = measuredScale({ seed: 7, bass: -0.4 });
    const wrong = notes.map((note) => (note.midi === 30 ? misnumbered(note, shift) : note));
    expect(standing(wrong)).toEqual([30]);
    const [right, bent] = [notes, wrong].map((all) => inharmonicityAt(fitInharmonicityCurve(all)!, 30).inharmonicityB);
    expect(Math.abs(bent! / right! - 1)).toBeLessThan(0.06);
  });

  it('are told string by string', () => {
    const left = measuredScale({ seed: 8 }).map((note) => ({ ...note, stringPosition: 1 as const }));
    const right = left.map((note) => ({ ...note, stringPosition: 3 as const }));
    const curve = fitInharmonicityCurve([...left, ...withFactors(right, (midi) => (midi === 70 ? 1.5 : 1))])!;
    const found = curve.notes.filter(({ standsOut }) => standsOut);
    expect(found.map(({ midi, stringPosition }) => [midi, stringPosition])).toEqual([[70, 3]]);
    expect(found[0]!.ratioToCurve).toBeGreaterThan(1.3);
    expect(found[0]!.ratioToCurve).toBeLessThan(1.7);
  });
});

/** The note as a fit reads it that takes each of its partials 5 to 25 for another one. */
function misnumbered(note: MeasuredInharmonicity, shift: number): MeasuredInharmonicity {
  const f0Hz = 46.2;
  const partials = Array.from({ length: 21 }, (_, index) => {
    const n = index + 5;
    const hz = n * f0Hz * Math.sqrt(1 + note.inharmonicityB * n ** 2);
    return { partialNumber: n + shift, hz, standardUncertaintyHz: 0.02 };
  });
  const { inharmonicityB, inharmonicityBStandardUncertainty } = fitInharmonicity(partials, {
    f0Hz,
    inharmonicityB: 2e-4,
  })!;
  return { ...note, inharmonicityB, inharmonicityBStandardUncertainty };
}
