import { describe, expect, it } from 'vitest';
import { COMPASS_88, notesOf } from '../../src/piano/compass.ts';
import { medianOf } from '../../src/piano/robustStatistics.ts';
import { quickSample } from '../../src/survey/quickSample.ts';
import { sampleAnswer } from '../../src/survey/sampleAnswer.ts';
import { seededRandom } from '../support/seededRandom.ts';

const ALL = notesOf(COMPASS_88);
const ROW = { compass: COMPASS_88, bassBridgeTopMidi: 40, strutsAfterMidi: [40, 58, 71, 83] };
const SAMPLE = quickSample(ROW, 20);
const SCATTER = 0.7;
const ANSWER = sampleAnswer(SAMPLE, ALL, SCATTER);
const TRIALS = 4000;

/** Changes of a piano that stands still, each note with its own scatter. */
function trials(seed: number): Map<number, number>[] {
  const random = seededRandom(seed);
  return Array.from({ length: TRIALS }, () => new Map(ALL.map((midi) => [midi, SCATTER * random.normal()])));
}

function sampled(changes: ReadonlyMap<number, number>, moved: (midi: number) => number): number[] {
  return SAMPLE.map((midi) => (changes.get(midi) ?? 0) + moved(midi));
}

const share = (wanted: readonly boolean[]) => wanted.filter(Boolean).length / wanted.length;

/** 1.96 + 1.28 standard deviations of what is looked at make the limit; a figure is taken for real beyond 1.96 of them. */
const ALARM_OF_UNIFORM = 1.96 / (1.96 + 1.2816);

/** The deepest of neighbouring pairs against the mean of the others. */
function deepestPair(cents: readonly number[]): number {
  const total = cents.reduce((sum, value) => sum + value, 0);
  const depths = cents.slice(1).map((value, index) => {
    const pair = value + (cents[index] ?? 0);
    return pair / 2 - (total - pair) / (cents.length - 2);
  });
  return Math.min(...depths);
}

describe('sampleAnswer', () => {
  it('states a uniform movement that the median finds nine times in ten, and invents one at most once in twenty', () => {
    const alarm = ANSWER.uniformCents * ALARM_OF_UNIFORM;
    const still = trials(1).map((changes) => Math.abs(medianOf(sampled(changes, () => 0))) > alarm);
    const moved = trials(2).map((changes) => medianOf(sampled(changes, () => -ANSWER.uniformCents)) < -alarm);
    expect(share(still)).toBeLessThan(0.055);
    expect(share(moved)).toBeGreaterThan(0.89);
    expect(share(moved)).toBeLessThan(0.95);
  });

  it('states a zone that two notes of the sample show nine times in ten, wherever it lies', () => {
    const { zoneNoteCount, zoneCents } = ANSWER;
    if (zoneNoteCount === null || zoneCents === null) throw new Error('no zone');
    const quantile = 2.794; // of the standard normal law at 1 − 0.05/19: Python statistics.NormalDist
    const alarm = (zoneCents * quantile) / (quantile + 1.2816);
    const still = trials(3).map((changes) => deepestPair(sampled(changes, () => 0)) < -alarm);
    expect(share(still)).toBeLessThan(0.055);
    const random = seededRandom(5);
    const moved = trials(4).map((changes) => {
      const from = 21 + Math.floor(random.uniform() * (88 - zoneNoteCount + 1));
      const inZone = (midi: number) => (midi >= from && midi < from + zoneNoteCount ? -zoneCents : 0);
      return deepestPair(sampled(changes, inZone)) < -alarm;
    });
    expect(share(moved)).toBeGreaterThan(0.88);
  });

  it('names the shortest zone that always has two of the notes played in it', () => {
    const count = ANSWER.zoneNoteCount ?? 0;
    const least = (length: number) =>
      Math.min(
        ...ALL.slice(0, 88 - length + 1).map((from) => SAMPLE.filter((m) => m >= from && m < from + length).length),
      );
    expect(least(count)).toBe(2);
    expect(least(count - 1)).toBe(1);
  });

  it('sees less with fewer notes and with more scatter', () => {
    const few = sampleAnswer(quickSample(ROW, 10), ALL, SCATTER);
    expect(few.uniformCents).toBeGreaterThan(ANSWER.uniformCents);
    expect(few.zoneNoteCount).toBeGreaterThan(ANSWER.zoneNoteCount ?? 0);
    expect(sampleAnswer(SAMPLE, ALL, 1.4).uniformCents).toBeCloseTo(2 * ANSWER.uniformCents, 9);
  });

  it('says nothing of a zone where all notes but a few at one end could hide it', () => {
    expect(sampleAnswer([21, 22, 23, 24], [21, 22, 23, 24]).zoneNoteCount).toBe(2);
    expect(sampleAnswer(SAMPLE, ALL).uniformCents).toBe(ANSWER.uniformCents);
  });

  it('refuses too few notes and a scatter of zero', () => {
    expect(() => sampleAnswer([60, 61, 62], ALL)).toThrow(/playedMidi/);
    expect(() => sampleAnswer(SAMPLE, ALL, 0)).toThrow(/scatterCents/);
  });
});
