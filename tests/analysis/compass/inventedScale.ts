/** Inharmonicity of an invented instrument, note by note, as a survey would measure it. */
import type { MeasuredInharmonicity } from '../../../src/analysis/compass/inharmonicityCurve.ts';
import { seededRandom } from '../../support/seededRandom.ts';

export type InventedScale = {
  readonly seed: number;
  /** log of the instrument's treble and bass against the average piano's. */
  readonly treble?: number;
  readonly bass?: number;
  /** How far the scale waves about the two asymptotes, in log B. */
  readonly wave?: number;
  /** Added to log B on the bass bridge, up to E2. */
  readonly bassStep?: number;
  readonly spread?: number;
  readonly fromMidi?: number;
  readonly toMidi?: number;
  readonly everyNotes?: number;
};

export const BASS_TOP_MIDI = 40;

/** log B of the scale itself. The asymptotes are those of F. Rigaud, B. David, L. Daudet, DAFx-2011. */
export function trueLogB(scale: InventedScale, midi: number): number {
  const { treble = 0, bass = 0, wave = 0, bassStep = 0 } = scale;
  const asymptotes = Math.exp(9.26e-2 * midi - 13.64 + treble) + Math.exp(-8.47e-2 * midi - 5.82 + bass);
  return Math.log(asymptotes) + wave * Math.sin(midi / 9 + scale.seed) + (midi <= BASS_TOP_MIDI ? bassStep : 0);
}

/** Measuring errors of 0.2 % in the middle and 3 % at F♯7, as fits of three to thirty partials give. */
export function measuredScale(scale: InventedScale): MeasuredInharmonicity[] {
  const { spread = 0.04, fromMidi = 21, toMidi = 102, everyNotes = 1 } = scale;
  const random = seededRandom(scale.seed);
  const notes: MeasuredInharmonicity[] = [];
  for (let midi = fromMidi; midi <= toMidi; midi += everyNotes) {
    const relative = 0.002 + 0.03 * Math.exp((midi - 102) / 6);
    const inharmonicityB = Math.exp(trueLogB(scale, midi) + spread * random.normal() + relative * random.normal());
    const inharmonicityBStandardUncertainty = relative * inharmonicityB;
    notes.push({ midi, stringPosition: 2, inharmonicityB, inharmonicityBStandardUncertainty });
  }
  return notes;
}

/** The notes with B of some of them multiplied. */
export function withFactors(
  notes: readonly MeasuredInharmonicity[],
  factorOf: (midi: number) => number,
): MeasuredInharmonicity[] {
  return notes.map((note) => ({ ...note, inharmonicityB: note.inharmonicityB * factorOf(note.midi) }));
}
