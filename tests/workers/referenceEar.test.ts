import { describe, expect, it } from 'vitest';
import { createReferenceEar, type EarNews } from '../../src/workers/referenceEar.ts';
import { seededRandom } from '../support/seededRandom.ts';

const RATE_HZ = 16000;
const BLOCK = 2048;

/** Noise, then a tone from `fromS` to `toS`, then noise again. */
function sound(durationS: number, fromS: number, toS: number, hz = 440.02): Float32Array {
  const { normal } = seededRandom(3);
  return Float32Array.from({ length: durationS * RATE_HZ }, (_, i) => {
    const timeS = i / RATE_HZ;
    const tone = timeS >= fromS && timeS < toS ? 0.2 * Math.cos(2 * Math.PI * hz * timeS) : 0;
    return tone + 0.0003 * normal();
  });
}

function hear(samples: Float32Array): EarNews[] {
  const ear = createReferenceEar(RATE_HZ, 440);
  const news: EarNews[] = [];
  for (let at = 0; at < samples.length; at += BLOCK) news.push(...ear.hear(samples.subarray(at, at + BLOCK)));
  return news;
}

const outcomes = (news: EarNews[]) => news.flatMap((piece) => (piece.kind === 'outcome' ? [piece.outcome] : []));
const seconds = (news: EarNews[]) => news.flatMap((piece) => (piece.kind === 'heard' ? [piece.heardS] : []));

describe('createReferenceEar', () => {
  it('counts the seconds of a tone that goes on, and measures it by itself', () => {
    const news = hear(sound(20, 2, 20));
    expect(seconds(news).slice(0, 6)).toEqual([0, 0, 1, 2, 3, 4]);
    const [outcome] = outcomes(news);
    if (!outcome?.measured) throw new Error('not measured');
    expect(Math.abs(outcome.hz / 440.02 - 1)).toBeLessThan(1e-6);
  });

  it('measures a tone that ends after ten seconds', () => {
    const [outcome] = outcomes(hear(sound(18, 1, 14)));
    expect(outcome?.measured).toBe(true);
  });

  it('counts anew after a tone that was too short, and after another note', () => {
    expect(outcomes(hear(sound(14, 1, 6)))).toEqual([]);
    expect(Math.max(...seconds(hear(sound(14, 1, 6))))).toBe(5);
    expect(Math.max(...seconds(hear(sound(6, 0, 6, 466.16))))).toBe(0);
  });

  it('counts anew after sound was lost', () => {
    const ear = createReferenceEar(RATE_HZ, 440);
    const tone = sound(20, 0, 20);
    ear.hear(tone.subarray(0, 9.5 * RATE_HZ));
    ear.startAfresh();
    expect(seconds(ear.hear(tone.subarray(9.5 * RATE_HZ, 11.5 * RATE_HZ)))).toEqual([1, 2]);
  });
});
