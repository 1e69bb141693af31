import { describe, expect, it } from 'vitest';
import { frequencyBoundHz } from '../../../src/analysis/signal/cramerRao.ts';
import { firstSecondEnergy, fitPartial, type PartialRequest } from '../../../src/analysis/tone/partialFit.ts';
import { hzToCents } from '../../../src/piano/cents.ts';
import { type SeededRandom, seededRandom } from '../../support/seededRandom.ts';
import { boundCovariance, DAMPED_TONE_STEPS, dampedTones } from '../fisherInformation.ts';

const RATE_HZ = 16000;

type Tone = { readonly hz: number; readonly decayTimeS: number; readonly amplitude: number };
const dampingOf = (tone: Tone) => Math.log(1000) / tone.decayTimeS;

function sound(tones: readonly Tone[], durationS: number, noiseRms: number, random: SeededRandom) {
  const phases = tones.map(() => 2 * Math.PI * random.uniform());
  const samples = Float32Array.from({ length: durationS * RATE_HZ }, (_, n) => {
    const timeS = n / RATE_HZ;
    const value = tones.reduce((sum, tone, i) => {
      const size = tone.amplitude * Math.exp(-dampingOf(tone) * timeS);
      return sum + size * Math.cos(2 * Math.PI * tone.hz * timeS + phases[i]!);
    }, 0);
    return value + noiseRms * random.normal();
  });
  return { samples, phases };
}

function requestOf(
  samples: Float32Array,
  predictedHz: number,
  overrides: Partial<PartialRequest> = {},
): PartialRequest {
  return {
    samples,
    sampleRateHz: RATE_HZ,
    startIndex: 0,
    endIndex: samples.length,
    partialNumber: 1,
    predictedHz,
    spacingHz: predictedHz,
    gateHz: 0.01 * predictedHz,
    leastRateHz: 50,
    ...overrides,
  };
}

/** The first half second's RMS of a tone that hardly decays in it. */
const noiseBelow = (db: number) => Math.SQRT1_2 * 0.5 * 10 ** (-db / 20);

const REGISTERS = [
  { register: 'bass', hz: 110, decayTimeS: 15, durationS: 2.5 },
  { register: 'tenor', hz: 220, decayTimeS: 9, durationS: 2.5 },
  { register: 'middle', hz: 440, decayTimeS: 4, durationS: 2 },
  { register: 'treble', hz: 1760, decayTimeS: 1.2, durationS: 1 },
  { register: 'top', hz: 3520, decayTimeS: 0.6, durationS: 0.8 },
];
const TRIALS = 60;

describe.each([40, 15])('the frequency of a damped tone at %s dB', (db) => {
  it.each(REGISTERS)('scatters within 1.3 times the bound and as much as stated: $register', (row) => {
    const tone = { hz: row.hz, decayTimeS: row.decayTimeS, amplitude: 0.5 };
    const noiseRms = noiseBelow(db);
    const boundHz = frequencyBoundHz({
      ...row,
      amplitude: 0.5,
      dampingPerS: dampingOf(tone),
      noiseRms,
      sampleRateHz: RATE_HZ,
    });
    const random = seededRandom(row.hz + db);
    const errors = Array.from({ length: TRIALS }, () => {
      const { samples } = sound([tone], row.durationS, noiseRms, random);
      // The prediction is off by an eighth of the gate, up or down, as a curve fitted to other partials would be.
      const leastRateHz = row.hz > 1000 ? 120 : 50;
      const fit = fitPartial(requestOf(samples, row.hz * (1 + 0.0025 * (random.uniform() - 0.5)), { leastRateHz }))!;
      return { hz: fit.hz - row.hz, z: (fit.hz - row.hz) / fit.standardUncertaintyHz };
    });
    const rms = (key: 'hz' | 'z') => Math.sqrt(errors.reduce((sum, error) => sum + error[key] ** 2, 0) / TRIALS);
    // 60 trials give a scatter to 9 %.
    expect(rms('hz') / boundHz).toBeLessThan(1.3);
    expect(rms('hz') / boundHz).toBeGreaterThan(0.75);
    expect(rms('z')).toBeLessThan(1.3);
    expect(rms('z')).toBeGreaterThan(0.7);
  });
});

it('states one sigma that holds two times out of three: 150 tones of many kinds', () => {
  const random = seededRandom(150);
  const inside = Array.from({ length: 150 }, () => {
    const hz = 100 * 30 ** random.uniform();
    const tone = { hz, decayTimeS: 0.6 * 10 ** random.uniform(), amplitude: 0.5 };
    const { samples } = sound([tone], 1, noiseBelow(10 + 40 * random.uniform()), random);
    const fit = fitPartial(requestOf(samples, hz * 1.0005, { leastRateHz: hz > 1000 ? 120 : 50 }))!;
    return Math.abs(fit.hz - hz) < fit.standardUncertaintyHz;
  });
  const share = inside.filter((isInside) => isInside).length / 150;
  expect(share).toBeGreaterThan(0.55);
  expect(share).toBeLessThan(0.8);
});

it('finds a splitting of 0.2 Hz in 3 s at 15 dB about as well as any way could', () => {
  const tones = [
    { hz: 440, decayTimeS: 9, amplitude: 0.5 },
    { hz: 440.2, decayTimeS: 9, amplitude: 0.35 },
  ];
  const noiseRms = noiseBelow(15);
  const random = seededRandom(20);
  const steps = [...DAMPED_TONE_STEPS, ...DAMPED_TONE_STEPS];
  const z = Array.from({ length: 30 }, () => {
    const { samples, phases } = sound(tones, 3, noiseRms, random);
    const at = tones.flatMap((tone, i) => [tone.hz, dampingOf(tone), Math.log(tone.amplitude), phases[i]!]);
    // At a fifth of the rate the noise is a fifth of the power for the same information.
    const thin = dampedTones(9600, 3200);
    const bound = boundCovariance(thin, at, steps, noiseRms / Math.sqrt(5));
    const boundHz = Math.sqrt(bound[0]![0]! + bound[4]![4]! - 2 * bound[0]![4]!);
    const fit = fitPartial(requestOf(samples, 440))!;
    const hz = fit.suspected.map((part) => part.hz).sort((a, b) => a - b);
    return hz.length === 2 && boundHz < 0.05 ? (hz[1]! - hz[0]! - 0.2) / boundHz : undefined;
  }).filter((value) => value !== undefined);
  // Phases at which even the bound says 0.05 Hz or more are left aside.
  expect(z.length).toBeGreaterThan(12);
  const sorted = z.map(Math.abs).sort((a, b) => a - b);
  // Median of |z| of a normal distribution is 0.67; 1.3 times that, and what so few trials add.
  expect(sorted[sorted.length >> 1]!).toBeLessThan(1);
});

describe('fitPartial', () => {
  const tone = { hz: 440, decayTimeS: 4, amplitude: 0.3 };

  it('measures amplitude and decay', () => {
    const { samples } = sound([tone], 2, 2e-3, seededRandom(1));
    const fit = fitPartial(requestOf(samples, 440.4))!;
    expect(fit.components).toHaveLength(1);
    const [part] = fit.components;
    expect(part!.amplitude / 0.3).toBeCloseTo(1, 2);
    expect(Math.log(1000) / part!.dampingPerS / 4).toBeCloseTo(1, 1.7);
    expect(fit.explainedShare).toBeGreaterThan(0.99);
  });

  it.each([50, 400])(
    'estimates the noise whether or not the band is averaged again: %s values a second',
    (leastRateHz) => {
      const random = seededRandom(2);
      const ratios = Array.from({ length: 8 }, () => {
        const { samples } = sound([tone], 2, 0.01, random);
        return fitPartial(requestOf(samples, 440, { leastRateHz }))!.noiseRms / 0.01;
      });
      expect(ratios.reduce((sum, ratio) => sum + ratio, 0) / 8).toBeCloseTo(1, 1);
    },
  );

  it('tells prompt sound and aftersound of one frequency apart and keeps the pitch', () => {
    const after = { hz: 440, decayTimeS: 14, amplitude: 0.03 };
    const { samples } = sound([{ ...tone, decayTimeS: 2.5 }, after], 4, 3e-4, seededRandom(3));
    const fit = fitPartial(requestOf(samples, 440.3))!;
    expect(fit.components).toHaveLength(2);
    const decays = fit.components.map((part) => Math.log(1000) / part.dampingPerS).sort((a, b) => a - b);
    expect(decays[0]! / 2.5).toBeCloseTo(1, 1);
    expect(decays[1]! / 14).toBeCloseTo(1, 0.6);
    expect(Math.abs(hzToCents(fit.hz, 440))).toBeLessThan(0.01);
  });

  it('keeps to the gate: a louder tone outside is another’s', () => {
    const { samples } = sound([tone, { ...tone, hz: 447, amplitude: 0.6 }], 2, 1e-3, seededRandom(4));
    const fit = fitPartial(requestOf(samples, 440, { gateHz: 2 }))!;
    expect(Math.abs(fit.components[0]!.hz - 440)).toBeLessThan(0.05);
    expect(
      fitPartial(requestOf(sound([{ ...tone, hz: 447 }], 2, 1e-3, seededRandom(5)).samples, 440, { gateHz: 2 })),
    ).toBeUndefined();
  });

  it.each([50, 60])('passes over hum at a multiple of %s Hz', (mains) => {
    const hum = { hz: 4 * mains, decayTimeS: 1e6, amplitude: 0.1 };
    const string = { hz: 4 * mains + 1.2, decayTimeS: 5, amplitude: 0.3 };
    const both = sound([string, hum], 2.5, 1e-3, seededRandom(6)).samples;
    const fit = fitPartial(requestOf(both, string.hz, { gateHz: 3 }))!;
    expect(fit.components).toHaveLength(1);
    expect(Math.abs(fit.hz - string.hz)).toBeLessThan(0.01);
    const humAlone = sound([hum], 2.5, 1e-3, seededRandom(7)).samples;
    expect(fitPartial(requestOf(humAlone, hum.hz, { gateHz: 3 }))).toBeUndefined();
  });

  it('finds nothing in noise, and nothing in too short a stretch', () => {
    const noise = sound([], 1, 0.1, seededRandom(8)).samples;
    const found = [300, 440, 700, 1100].filter((hz) => fitPartial(requestOf(noise, hz)) !== undefined);
    expect(found).toEqual([]);
    const { samples } = sound([tone], 1, 1e-3, seededRandom(9));
    expect(fitPartial(requestOf(samples, 440, { endIndex: 200 }))).toBeUndefined();
  });

  it('gives the frequencies’ covariance with the uncertainties on its diagonal', () => {
    const { samples } = sound([tone, { ...tone, hz: 441.5, amplitude: 0.2 }], 2, 3e-3, seededRandom(10));
    const fit = fitPartial(requestOf(samples, 440))!;
    expect(fit.components).toHaveLength(2);
    fit.components.forEach((part, i) => {
      expect(Math.sqrt(fit.covarianceHz[i]![i]!) / part.standardUncertaintyHz).toBeCloseTo(1, 9);
    });
    expect(fit.covarianceHz[0]![1]).toBeCloseTo(fit.covarianceHz[1]![0]!, 12);
  });

  it('keeps the louder tone’s pitch and does not jump between two equal ones', () => {
    const pitch = (ratio: number) => {
      const pair = [tone, { ...tone, hz: 441.5, amplitude: tone.amplitude * ratio }];
      return fitPartial(requestOf(sound(pair, 2, 1e-3, seededRandom(11)).samples, 440))!.hz;
    };
    expect(Math.abs(pitch(0.3) - 440)).toBeLessThan(0.02);
    expect(pitch(0.99)).toBeGreaterThan(440.6);
    expect(pitch(1.01)).toBeLessThan(440.9);
    expect(Math.abs(pitch(3) - 441.5)).toBeLessThan(0.02);
  });
});

it('firstSecondEnergy is A² without damping and A²/(2α) where all is over within the second', () => {
  expect(firstSecondEnergy({ amplitude: 0.5, dampingPerS: 0 })).toBeCloseTo(0.25, 5);
  expect(firstSecondEnergy({ amplitude: 0.5, dampingPerS: 20 })).toBeCloseTo(0.25 / 40, 9);
});
