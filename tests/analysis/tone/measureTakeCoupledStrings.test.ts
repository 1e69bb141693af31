import { describe, expect, it } from 'vitest';
import type { NoteReading } from '../../../src/piano/reading.ts';
import { seededRandom } from '../../support/seededRandom.ts';
import { addCoupledPair, type CoupledPair } from '../coupledStrings.ts';
import { RATE_HZ, readingOf } from '../takes.ts';

const A4_HZ = 440;
const LN_1000 = Math.log(1000);

/** The first partials of an A4 of two strings, all with the bridge's coupling; the mistuning grows with the partial's frequency. */
function coupledA4(coupling: Pick<CoupledPair, 'mistuningHz' | 'reactance' | 'resistance'>): NoteReading {
  const random = seededRandom(1977);
  const samples = new Float32Array(3.6 * RATE_HZ);
  const onsetIndex = Math.round(0.3 * RATE_HZ);
  for (const n of [1, 2, 3, 4]) {
    addCoupledPair(samples, onsetIndex, RATE_HZ, {
      ...coupling,
      hz: n * A4_HZ * Math.sqrt(1 + 7e-4 * n * n),
      mistuningHz: n * coupling.mistuningHz,
      ownDampingPerS: 0.25,
      amplitude: 0.1 / n,
      secondBlow: 0.8,
      phase: 2 * Math.PI * random.uniform(),
    });
  }
  for (let i = 0; i < samples.length; i++) samples[i]! += 1e-4 * random.normal();
  return readingOf(samples, RATE_HZ, { onsetIndex });
}

const partial = (reading: NoteReading, n: number) => reading.partials.find((row) => row.partialNumber === n)!;

/**
 * What the paper says of a bridge that only resists: the modes are at ε + j·η ± √(ε² − η²). Below ε = η both have one frequency and
 * the dampings η ± √(η² − ε²), above it one damping and the frequencies apart by 2·√(ε² − η²).
 */
const rootOf = (mistuningHz: number, resistance: number) =>
  Math.sqrt(Math.abs((Math.PI * mistuningHz) ** 2 - resistance ** 2));

describe('two strings at one bridge (Weinreich 1977)', () => {
  it('in tune within what the coupling locks, give prompt sound and aftersound and no beat', () => {
    const resistance = 2.2;
    const mistuningHz = 0.1;
    const reading = coupledA4({ mistuningHz, reactance: 0, resistance });
    for (const n of [1, 2, 3]) {
      const root = rootOf(n * mistuningHz, resistance);
      const { promptDecayTimeS, afterDecayTimeS, beats } = partial(reading, n);
      expect(promptDecayTimeS! / (LN_1000 / (resistance + root + 0.25))).toBeCloseTo(1, 1.3);
      expect(afterDecayTimeS! / (LN_1000 / (resistance - root + 0.25))).toBeCloseTo(1, 1);
      expect(beats).toEqual([]);
    }
    expect(reading.beating.kind).toBe('none');
  });

  it('equally struck and in tune, decay twice as fast as one string alone, with no aftersound', () => {
    const samples = new Float32Array(3 * RATE_HZ);
    const usual = { mistuningHz: 0, reactance: 0, resistance: 1.5, ownDampingPerS: 0.25, phase: 1, secondBlow: 1 };
    for (const n of [1, 2, 3]) addCoupledPair(samples, 4000, RATE_HZ, { ...usual, hz: A4_HZ * n, amplitude: 0.1 / n });
    const { promptDecayTimeS, afterDecayTimeS } = partial(readingOf(samples, RATE_HZ, { onsetIndex: 4000 }), 1);
    expect(promptDecayTimeS! / (LN_1000 / (2 * 1.5 + 0.25))).toBeCloseTo(1, 2);
    expect(afterDecayTimeS).toBeNull();
  });

  it('further apart than that, beat slower than alone, and decay at one rate', () => {
    const resistance = 1.2;
    const mistuningHz = 1.1;
    const reading = coupledA4({ mistuningHz, reactance: 0, resistance });
    for (const n of [1, 2, 3, 4]) {
      const { beats, promptDecayTimeS, afterDecayTimeS } = partial(reading, n);
      const rateHz = rootOf(n * mistuningHz, resistance) / Math.PI;
      expect(rateHz).toBeLessThan(n * mistuningHz);
      expect(beats).toHaveLength(1);
      expect(beats[0]!.rateHz / rateHz).toBeCloseTo(1, 1.7);
      expect(promptDecayTimeS! / (LN_1000 / (resistance + 0.25))).toBeCloseTo(1, 1.3);
      expect(afterDecayTimeS).toBeNull();
    }
    expect(reading.beating.kind).toBe('unison');
  });

  it('pushed apart by a springy bridge, beat faster than they would alone', () => {
    const [mistuningHz, reactance, resistance] = [0.8, 2.5, 0.3];
    const { beats } = partial(coupledA4({ mistuningHz, reactance, resistance }), 1);
    // Real part of √(ε² + ζ²) with ζ = ξ + j·η, written as √((|w| + Re w)/2).
    const re = (Math.PI * mistuningHz) ** 2 + reactance ** 2 - resistance ** 2;
    const size = Math.hypot(re, 2 * reactance * resistance);
    const rateHz = Math.sqrt((size + re) / 2) / Math.PI;
    expect(rateHz).toBeGreaterThan(1.35 * mistuningHz);
    expect(beats[0]!.rateHz / rateHz).toBeCloseTo(1, 1.7);
  });
});
