import { describe, expect, it } from 'vitest';
import { measureTake } from '../../../src/analysis/tone/measureTake.ts';
import { hzToCents } from '../../../src/piano/cents.ts';
import { seededRandom } from '../../support/seededRandom.ts';
import { measured, RATE_HZ, takeOf } from '../takes.ts';

const faultsOf = (samples: Float32Array) => {
  const outcome = measureTake(samples, RATE_HZ, { pitchStandardHz: 440, stringPosition: 0 });
  return outcome.found ? outcome.reading.quality.faults : [outcome.reason];
};

describe('mains hum', () => {
  it.each([
    { hum: 50, midi: 31 },
    { hum: 50, midi: 43 },
    { hum: 50, midi: 55 },
    { hum: 60, midi: 35 },
    { hum: 60, midi: 47 },
    { hum: 60, midi: 59 },
  ])(
    'of $hum Hz beside MIDI $midi, whose partials are near it, gives no beat and no wrong partial',
    ({ hum, midi }) => {
      // G1 49.0, B1 61.7 Hz (ISO 16) and their octaves stand within 3 % of the hum's multiples.
      const spec = { strings: [{ midi }], durationS: 2.5, snrDb: 45, seed: midi };
      const { reading, truth } = measured({ ...spec, hum: { hz: hum, levelDb: -45 } });
      expect(reading.midi).toBe(midi);
      expect(reading.partials.flatMap((partial) => partial.beats)).toEqual([]);
      for (const partial of reading.partials) {
        const trueHz = truth.strings[0]!.partialHz[partial.partialNumber - 1]!;
        expect(Math.abs(hzToCents(partial.frequencyHz, trueHz))).toBeLessThan(1);
      }
      expect(Math.abs(reading.inharmonicityB! / truth.strings[0]!.inharmonicityB - 1)).toBeLessThan(0.003);
    },
  );
});

describe('a knock in the middle of a take', () => {
  it.each([45, 57, 69, 81])('moves partial 1 of MIDI %s by less than 0.1 cents', (midi) => {
    const spec = { strings: [{ midi }], durationS: 2.2, snrDb: 40, seed: midi };
    const quiet = measured(spec).reading;
    for (const levelDb of [-20, -8]) {
      const knocked = measured({ ...spec, knock: { atS: 1.1, levelDb } }).reading;
      expect(knocked.midi).toBe(midi);
      expect(Math.abs(hzToCents(knocked.partial1Hz, quiet.partial1Hz))).toBeLessThan(0.1);
    }
  });
});

it.each([1, 2, 3])('the hammer’s own noise does not move the pitch (%s)', (seed) => {
  for (const midi of [40, 69, 96]) {
    const { reading, truth } = measured({ strings: [{ midi }], durationS: 1.6, snrDb: 45, hammerNoiseDb: -15, seed });
    const errorCents = Math.abs(hzToCents(reading.partial1Hz, truth.strings[0]!.partialHz[0]!));
    expect(errorCents).toBeLessThan(Math.max(0.01, 4 * reading.offsetStandardUncertaintyCents));
  }
});

describe('what is no single struck string', () => {
  /** Vowel-like: harmonics of a pitch that glides and sways, with a formant's weights. */
  function speech(startHz: number, endHz: number, seed: number): Float32Array {
    const { uniform } = seededRandom(seed);
    const samples = new Float32Array(1.6 * RATE_HZ);
    let turns = uniform();
    for (let n = 0.2 * RATE_HZ; n < samples.length; n++) {
      const share = (n / RATE_HZ - 0.2) / 1.4;
      const hz = startHz * (endHz / startHz) ** share * (1 + 0.008 * Math.sin(2 * Math.PI * 5 * share * 1.4));
      turns += hz / RATE_HZ;
      const loudness = Math.min(1, share * 20) * Math.min(1, (1 - share) * 5);
      for (let k = 1; k <= 12; k++) {
        const formant = 1 / (1 + ((k * hz - 600) / 200) ** 2) + 0.3 / (1 + ((k * hz - 1700) / 300) ** 2);
        samples[n]! += 0.2 * loudness * formant * Math.sin(2 * Math.PI * k * turns);
      }
    }
    return samples;
  }

  it.each([
    [120, 95],
    [210, 260],
    [330, 180],
    [150, 150],
  ])('a voice that goes from %s to %s Hz is not usable', (startHz, endHz) => {
    expect(faultsOf(speech(startHz, endHz, 1))).not.toEqual([]);
  });

  it.each([[[57, 64]], [[60, 61]], [[45, 69]], [[72, 76]]])('two notes at once are not usable: MIDI %s', (midis) => {
    const takes = midis.map((midi, i) => takeOf({ strings: [{ midi }], peak: 0.35, snrDb: 40, seed: i + 1 }));
    const both = takes[0]!.samples.map((value, i) => value + takes[1]!.samples[i]!);
    expect(faultsOf(both)).toContain('two-notes');
  });

  it('a chord of three is not usable', () => {
    const takes = [60, 64, 67].map((midi) => takeOf({ strings: [{ midi }], peak: 0.3, snrDb: 40, seed: midi }));
    expect(faultsOf(takes[0]!.samples.map((_, i) => takes.reduce((sum, take) => sum + take.samples[i]!, 0)))).toContain(
      'two-notes',
    );
  });

  it.each([33, 57, 81])('a clipped take of MIDI %s says so, with its pitch still near', (midi) => {
    const { samples, truth } = takeOf({ strings: [{ midi }], peak: 0.99, snrDb: 50 });
    const clipped = samples.map((value) => Math.max(-0.4, Math.min(0.4, value)));
    const outcome = measureTake(clipped, RATE_HZ, { pitchStandardHz: 440, stringPosition: 0 });
    if (!outcome.found) throw new Error(outcome.detail);
    expect(outcome.reading.quality).toMatchObject({ isClipped: true, isUsable: false });
    expect(outcome.reading.quality.faults).toContain('clipped');
    expect(Math.abs(hzToCents(outcome.reading.partial1Hz, truth.strings[0]!.partialHz[0]!))).toBeLessThan(2);
  });

  it('a knock alone is no note', () => {
    const { normal } = seededRandom(9);
    const knock = Float32Array.from({ length: RATE_HZ }, (_, n) =>
      n < 5000 ? 0 : 0.5 * Math.exp(-(n - 5000) / 300) * normal(),
    );
    expect(faultsOf(knock)).not.toEqual([]);
  });

  it.each([33, 57, 81, 100])('a take of MIDI %s under the damper too soon is cut there, not spoilt', (midi) => {
    const { reading, truth } = measured({ strings: [{ midi }], releaseAtS: 0.9, durationS: 2, snrDb: 40, seed: midi });
    expect(reading.durationS).toBeLessThan(midi > 88 ? 2 : 1);
    const errorCents = Math.abs(hzToCents(reading.partial1Hz, truth.strings[0]!.partialHz[0]!));
    expect(errorCents).toBeLessThan(Math.max(0.02, 4 * reading.offsetStandardUncertaintyCents));
  });
});
