import { describe, expect, it } from 'vitest';
import { type NoteEvidence, noteOdds } from '../../../src/stringing/wireCheck/noteOdds.ts';

/** Number 16 of the metric series is 0.925 mm, 16½ 0.95: 5.3 % of B. Half a number in log B. */
const HALF_NUMBER = 2 * Math.log(0.95 / 0.925);
const note = (departures: readonly number[], change: Partial<NoteEvidence> = {}): NoteEvidence => ({
  statedDiameterMm: 0.925,
  departures,
  readingSigmas: departures.map(() => 0.02),
  commonSigma: 0.006,
  freedom: 50,
  room: { leastMm: 0.9, mostMm: 0.95 },
  wrongShare: 0.03,
  ...change,
});
const doubts = (evidence: NoteEvidence) => noteOdds(evidence).map(({ statedProbability }) => 1 - statedProbability);

describe('noteOdds', () => {
  it('finds from three strings what one leaves open', () => {
    expect(doubts(note([HALF_NUMBER]))[0]).toBeLessThan(0.3);
    const three = noteOdds(note([HALF_NUMBER, HALF_NUMBER, HALF_NUMBER]));
    for (const { statedProbability, best } of three) {
      expect(statedProbability).toBeLessThan(0.2);
      expect(best?.gauge.diameterMm).toBe(0.95);
    }
  });

  it('tells a wrong wire on two strings from a wrong schedule', () => {
    const [left, centre, right] = doubts(note([4 * HALF_NUMBER, 4 * HALF_NUMBER, 0]));
    expect([left! > 0.99, centre! > 0.99, right! < 0.05]).toEqual([true, true, true]);
  });

  it('lets three strings that err together say no more than one', () => {
    const together = { commonSigma: 0.05, readingSigmas: [0.002, 0.002, 0.002] };
    const [doubt] = doubts(note([HALF_NUMBER, HALF_NUMBER, HALF_NUMBER], together));
    expect(doubt).toBeLessThan(0.1);
  });

  it('doubts a size out of line with its neighbours on less evidence', () => {
    const outOfRun = { room: { leastMm: 0.95, mostMm: 1 } };
    expect(doubts(note([HALF_NUMBER], outOfRun))[0]).toBeGreaterThan(0.8);
    expect(doubts(note([0], outOfRun))[0]).toBeLessThan(0.6);
  });

  it('gives no size where none within reach explains the departure', () => {
    const [odds] = noteOdds(note([0.7]));
    expect(odds?.otherProbability).toBeGreaterThan(0.99);
  });
});
