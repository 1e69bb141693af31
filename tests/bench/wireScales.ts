/** Plain-wire scales as different from each other as those of different pianos; all invented. */
import type { ScheduleRow } from '../../src/piano/stringingRecords.ts';
import { type GaugeSeries, gaugeOfNumber } from '../../src/piano/wireGauge.ts';
import type { SeededRandom } from '../support/seededRandom.ts';

export type WireSeries = GaugeSeries;

export type InventedScale = {
  readonly rows: readonly ScheduleRow[];
  readonly series: WireSeries;
  /** Notes after which a group of plain wire ends at a strut. */
  readonly breaksAfterMidi: readonly number[];
  /** log of the piano's own B over that of the formula: slow along the compass, at most a tenth. */
  readonly departure: (midi: number) => number;
};

export function inventScale(random: SeededRandom): InventedScale {
  const highestMidi = random.uniform() < 0.7 ? 108 : 105;
  const lowestMidi = 40 + Math.floor(13 * random.uniform());
  const breaksAfterMidi = inventBreaks(lowestMidi, highestMidi, random);
  const series = random.uniform() < 0.5 ? 'metric' : 'inch';
  const lengths = inventLengths(breaksAfterMidi, random);
  const numbers = inventNumbers({ lowestMidi, highestMidi, breaksAfterMidi }, random);
  const rows = numbers.map(({ midi, gaugeNumber }) => ({
    midi,
    stringCount: midi < 48 ? (2 as const) : (3 as const),
    speakingLengthMm: lengths(midi) * Math.exp(0.003 * random.normal()),
    wireDiameterMm: gaugeOfNumber(series, gaugeNumber)?.diameterMm ?? null,
    coreDiameterMm: null,
    wrap: null,
    wireGrade: null,
    bridge: 'long' as const,
    interpolated: [],
  }));
  return { rows, series, breaksAfterMidi, departure: inventDeparture(lowestMidi, highestMidi, random) };
}

/** One to three struts, at least ten notes apart. */
function inventBreaks(lowestMidi: number, highestMidi: number, random: SeededRandom): number[] {
  const count = 1 + Math.floor(3 * random.uniform());
  const span = highestMidi - lowestMidi;
  return Array.from(
    { length: count },
    (_, index) => lowestMidi + Math.round((span * (index + 1 + 0.3 * (random.uniform() - 0.5))) / (count + 1)),
  );
}

/** Some 52 mm at C8, 1.88 to 1.93 times as long an octave below, bending towards a longest length; a small step at each strut. */
function inventLengths(breaksAfterMidi: readonly number[], random: SeededRandom): (midi: number) => number {
  const topMm = 49 + 5 * random.uniform();
  const perOctave = 0.91 + 0.04 * random.uniform();
  const longestMm = 850 + 800 * random.uniform();
  const steps = breaksAfterMidi.map(() => 0.015 * (2 * random.uniform() - 1));
  return (midi) => {
    const straightMm = topMm * 2 ** ((perOctave * (108 - midi)) / 12);
    const shift = breaksAfterMidi.reduce((sum, after, index) => sum + (midi <= after ? steps[index]! : 0), 0);
    return (straightMm / (1 + (straightMm / longestMm) ** 5) ** (1 / 5)) * (1 + shift);
  };
}

type Groups = {
  readonly lowestMidi: number;
  readonly highestMidi: number;
  readonly breaksAfterMidi: readonly number[];
};

/** Half a number thicker every three to nine notes down; at a strut the run ends, and now and then the wire steps by itself. */
function inventNumbers({ lowestMidi, highestMidi, breaksAfterMidi }: Groups, random: SeededRandom) {
  const notes: { midi: number; gaugeNumber: number }[] = [];
  let gaugeNumber = 12.5 + Math.floor(3 * random.uniform()) / 2;
  let left = runLength(random);
  for (let midi = highestMidi; midi >= lowestMidi; midi -= 1) {
    if (left === 0 || breaksAfterMidi.includes(midi)) {
      gaugeNumber += breaksAfterMidi.includes(midi) && random.uniform() < 0.3 ? 1 : 0.5;
      left = runLength(random);
    }
    gaugeNumber = Math.min(gaugeNumber, THICKEST_NUMBER);
    notes.push({ midi, gaugeNumber });
    left -= 1;
  }
  return notes.reverse();
}

const THICKEST_NUMBER = 21;

function runLength(random: SeededRandom): number {
  return 3 + Math.floor(7 * random.uniform());
}

/** A level and two waves, the largest departure 3 to 10 %. */
function inventDeparture(lowestMidi: number, highestMidi: number, random: SeededRandom): (midi: number) => number {
  const largest = 0.03 + 0.07 * random.uniform();
  const level = random.normal();
  const waves = [35, 70].map((period) => ({
    period: period * (0.8 + 0.6 * random.uniform()),
    height: random.normal() * (period / 70),
    phase: 2 * Math.PI * random.uniform(),
  }));
  const shape = (midi: number) =>
    waves.reduce(
      (sum, { period, height, phase }) => sum + height * Math.sin((2 * Math.PI * midi) / period + phase),
      level,
    );
  const notes = Array.from({ length: highestMidi - lowestMidi + 1 }, (_, index) => lowestMidi + index);
  const scale = largest / Math.max(...notes.map((midi) => Math.abs(shape(midi))));
  return (midi) => scale * shape(midi);
}
