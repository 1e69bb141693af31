import { describe, expect, it } from 'vitest';
import { judgeBeating } from '../../../src/analysis/tone/beatKind.ts';
import { centsToHz } from '../../../src/piano/cents.ts';
import { partialOf } from '../partialFits.ts';

const single = (n: number, amplitude = 0.2) => partialOf(n, [{ hz: 440 * n, amplitude }]);
const beating = (n: number, rateHz: number, ratio = 0.5, amplitude = 0.2) =>
  partialOf(n, [
    { hz: 440 * n, amplitude },
    { hz: 440 * n + rateHz, amplitude: amplitude * ratio },
  ]);
const mistuned = (n: number, cents: number) => beating(n, centsToHz(cents, 440 * n) - 440 * n);

describe('judgeBeating of an open unison', () => {
  it('says unison where the rate grows with the partial number, and how far the strings stand apart', () => {
    const { beating: kind, stringOffsetsCents } = judgeBeating(
      [1, 2, 3, 4].map((n) => mistuned(n, 2.5)),
      0,
    );
    expect(kind.kind).toBe('unison');
    expect(kind.partialNumbers).toEqual([1, 2, 3, 4]);
    expect(kind.reason).toContain('2.5 cents');
    expect(stringOffsetsCents).toEqual([expect.closeTo(2.5, 2)]);
  });

  it('says false beat where one partial beats and the others would have shown it', () => {
    const { beating: kind, stringOffsetsCents } = judgeBeating([single(1), beating(2, 1.3), single(3), single(4)], 0);
    expect(kind).toMatchObject({ kind: 'false beat', partialNumbers: [2] });
    expect(kind.rateHz).toBeCloseTo(1.3, 9);
    expect(kind.depthDb).toBeCloseTo(9.542, 2);
    expect(stringOffsetsCents).toEqual([]);
  });

  it('says undetermined where only one partial is heard', () => {
    expect(judgeBeating([beating(1, 1.3)], 0).beating.kind).toBe('undetermined');
  });
});

describe('judgeBeating of one string', () => {
  it('calls every beat false, whatever its rates', () => {
    for (const partials of [[single(1), beating(2, 1.3), single(3)], [1, 2, 3, 4].map((n) => mistuned(n, 2.5))]) {
      const { beating: kind, stringOffsetsCents } = judgeBeating(partials, 2);
      expect(kind.kind).toBe('false beat');
      expect(stringOffsetsCents).toEqual([]);
    }
  });

  it('points to a neighbour not muted where the rate grows with the partial number, and only there', () => {
    const hint = /neighbour not muted/;
    expect(
      judgeBeating(
        [1, 2, 3, 4].map((n) => mistuned(n, 2.5)),
        1,
      ).beating.reason,
    ).toMatch(hint);
    expect(judgeBeating([single(1), beating(2, 1.3), single(3)], 1).beating.reason).not.toMatch(hint);
  });
});

describe.each([0, 1] as const)('judgeBeating at string %s', (stringPosition) => {
  it('says none where a slow beat would have shown, and not assessable where not', () => {
    const kind = (dampingPerS: number, audibleS: number) => {
      const quiet = { audibleS, noiseRms: 2e-3 };
      const partials = [1, 2].map((n) => partialOf(n, [{ hz: 440 * n, amplitude: 0.2, dampingPerS }], quiet));
      return judgeBeating(partials, stringPosition).beating;
    };
    expect(kind(1, 3)).toMatchObject({ kind: 'none', rateHz: null, depthDb: null, partialNumbers: [] });
    // A tone that is gone in a third of a second, as at C8, 40 dB above the noise.
    expect(kind(25, 0.3)).toMatchObject({ kind: 'undetermined', reason: expect.stringMatching(/not assessable/) });
  });

  it('leaves out partials 50 dB below the loudest', () => {
    const partials = [single(1), single(2), beating(3, 2, 0.5, 0.2 * 10 ** (-50 / 20))];
    expect(judgeBeating(partials, stringPosition).beating.kind).toBe('none');
  });

  it('reports the beat that is heard most: loud before deep', () => {
    const partials = [beating(1, 1.1, 0.4, 0.2), single(2), beating(3, 2.3, 0.8, 0.005), single(4)];
    expect(judgeBeating(partials, stringPosition).beating.rateHz).toBeCloseTo(1.1, 9);
  });
});
