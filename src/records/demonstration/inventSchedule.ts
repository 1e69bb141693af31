/** The stringing schedule of an invented upright: lengths and wires of the usual order, no real piano's. */
import { notesOf } from '../../piano/compass.ts';
import type { Instrument } from '../../piano/instrument.ts';
import { midiToHz } from '../../piano/note.ts';
import type { ScheduleRow, StringingSchedule } from '../../piano/stringingRecords.ts';
import { usualStringCount } from '../../piano/usualStringing.ts';
import { STEEL_DENSITY, WRAP_DENSITIES, WRAP_FILL } from '../../piano/wireMaterial.ts';
import type { SeededNumbers } from './seededNumbers.ts';

const PITCH_STANDARD_HZ = 440;

export function inventSchedule(instrument: Instrument, numbers: SeededNumbers): StringingSchedule {
  const bassTop = instrument.bassBridgeTopMidi ?? instrument.compass.lowestMidi - 1;
  return {
    id: numbers.id(),
    instrumentId: instrument.id,
    name: 'As it is',
    kind: 'as it is',
    pitchStandardHz: PITCH_STANDARD_HZ,
    rows: notesOf(instrument.compass).map((midi) => (midi <= bassTop ? woundRow(midi) : plainRow(midi))),
    remark: 'Invented: no real piano has this scale.',
  };
}

const COMMON = { wireGrade: null, interpolated: [] };

/** 60 mm at A7, 6.9 times as long three octaves below; half a size of wire thicker every five notes. */
function plainRow(midi: number): ScheduleRow {
  return {
    ...COMMON,
    midi,
    stringCount: usualStringCount(midi),
    speakingLengthMm: Math.round(60 * 2 ** (0.93 * ((105 - midi) / 12))),
    wireDiameterMm: rounded(0.775 + 0.025 * Math.floor((105 - midi) / 5), 0.025),
    coreDiameterMm: null,
    wrap: null,
    bridge: 'long',
  };
}

/** Strings of 1.15 m at the bottom and 1.0 m at the top of the bass bridge, wrapped so that each pulls 780 to 900 N. */
function woundRow(midi: number): ScheduleRow {
  const fromBottom = (midi - 21) / 29;
  const speakingLengthMm = Math.round(1150 - 150 * fromBottom);
  const coreDiameterMm = rounded(1.35 - 0.435 * fromBottom, 0.025);
  const wanted = (900 - 120 * fromBottom) / ((2 * speakingLengthMm * midiToHz(midi, PITCH_STANDARD_HZ)) / 1000) ** 2;
  const core = (Math.PI / 4) * STEEL_DENSITY.value * (coreDiameterMm / 1000) ** 2;
  const ring = (Math.PI / 4) * WRAP_FILL * WRAP_DENSITIES.copper.value;
  const overallMm = 1000 * Math.sqrt((coreDiameterMm / 1000) ** 2 + (wanted - core) / ring);
  return {
    ...COMMON,
    midi,
    stringCount: usualStringCount(midi),
    speakingLengthMm,
    wireDiameterMm: rounded(overallMm, 0.05),
    coreDiameterMm,
    wrap: 'copper',
    bridge: 'bass',
  };
}

function rounded(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toFixed(3));
}
