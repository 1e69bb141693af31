/** The stringing schedule of an invented piano: lengths and wires of the usual order, no real piano's. */
import { notesOf } from '../../piano/compass.ts';
import type { Instrument } from '../../piano/instrument.ts';
import { midiToHz } from '../../piano/note.ts';
import type { ScheduleRow, StringingSchedule } from '../../piano/stringingRecords.ts';
import { usualStringCount } from '../../piano/usualStringing.ts';
import { STEEL_DENSITY, WRAP_DENSITIES, WRAP_FILL } from '../../piano/wireMaterial.ts';
import type { InventedScale } from './inventedScale.ts';
import type { SeededNumbers } from './seededNumbers.ts';

const PITCH_STANDARD_HZ = 440;
const A7_MIDI = 105;

export function inventSchedule(
  scale: InventedScale,
  instrument: Instrument,
  numbers: SeededNumbers,
): StringingSchedule {
  return {
    id: numbers.id(),
    instrumentId: instrument.id,
    name: 'As it is',
    kind: 'as it is',
    pitchStandardHz: PITCH_STANDARD_HZ,
    rows: inventRows(scale, instrument),
    remark: 'Invented: no real piano has this scale.',
  };
}

/** The whole compass, from the lowest note up: copper-wound on the bass bridge, plain above. */
export function inventRows(
  scale: InventedScale,
  { compass, bassBridgeTopMidi }: Pick<Instrument, 'compass' | 'bassBridgeTopMidi'>,
): ScheduleRow[] {
  const bassTop = bassBridgeTopMidi ?? compass.lowestMidi - 1;
  const fromBottom = (midi: number) => (midi - compass.lowestMidi) / Math.max(1, bassTop - compass.lowestMidi);
  return notesOf(compass).map((midi) =>
    midi <= bassTop ? woundRow(scale, midi, fromBottom(midi)) : plainRow(scale, midi),
  );
}

function plainRow({ wireGrade, plain }: InventedScale, midi: number): ScheduleRow {
  const belowA7 = A7_MIDI - midi;
  const steps = Math.max(0, Math.floor(belowA7 / plain.notesPerSize));
  return {
    midi,
    stringCount: usualStringCount(midi),
    speakingLengthMm: rounded(plain.lengthAtA7Mm * 2 ** ((plain.octavesOfLength * belowA7) / 12), 0.5),
    wireDiameterMm: rounded(plain.thinnestMm + 0.025 * steps, 0.025),
    coreDiameterMm: null,
    wrap: null,
    wireGrade,
    bridge: 'long',
    interpolated: [],
  };
}

/** Straight from the bottom (0) to the top (1) of the bass bridge, wrapped so that each pulls what it is to pull. */
function woundRow({ wireGrade, wound }: InventedScale, midi: number, fromBottom: number): ScheduleRow {
  const between = ([bottom, top]: readonly [number, number]) => bottom + (top - bottom) * fromBottom;
  const speakingLengthMm = Math.round(between(wound.lengthMm));
  const coreDiameterMm = rounded(between(wound.coreMm), 0.025);
  const wanted = between(wound.pullN) / ((2 * speakingLengthMm * midiToHz(midi, PITCH_STANDARD_HZ)) / 1000) ** 2;
  const core = (Math.PI / 4) * STEEL_DENSITY.value * (coreDiameterMm / 1000) ** 2;
  const ring = (Math.PI / 4) * WRAP_FILL * WRAP_DENSITIES.copper.value;
  const overallMm = 1000 * Math.sqrt((coreDiameterMm / 1000) ** 2 + (wanted - core) / ring);
  return {
    midi,
    stringCount: usualStringCount(midi),
    speakingLengthMm,
    wireDiameterMm: rounded(overallMm, 0.05),
    coreDiameterMm,
    wrap: 'copper',
    wireGrade,
    bridge: 'bass',
    interpolated: [],
  };
}

function rounded(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toFixed(3));
}
