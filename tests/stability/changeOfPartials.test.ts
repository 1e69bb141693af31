import { describe, expect, it } from 'vitest';
import { centsToHz } from '../../src/piano/cents.ts';
import { changeOfPartials, type PartialFrequency } from '../../src/stability/changeOfPartials.ts';
import { type SeededRandom, seededRandom } from '../support/seededRandom.ts';

const B = 4e-4;
const SIGMA_HZ = 0.02;

/** f_n = n·f0·√(1 + B·n²), with noise as stated. B falls as the tension rises: B·f0² stays. */
function stiffString(f0Hz: number, count: number, random?: SeededRandom): PartialFrequency[] {
  const ownB = B * (220 / f0Hz) ** 2;
  return Array.from({ length: count }, (_, index) => {
    const n = index + 1;
    const noiseHz = random ? SIGMA_HZ * random.normal() : 0;
    const hz = n * f0Hz * Math.sqrt(1 + ownB * n * n) + noiseHz;
    return { partialNumber: n, hz, standardUncertaintyHz: SIGMA_HZ };
  });
}

/** Partial 1 of the one against that of the other, without noise. */
function truthCents(beforeHz: number, afterHz: number): number {
  const [before, after] = [stiffString(beforeHz, 1)[0]!.hz, stiffString(afterHz, 1)[0]!.hz];
  return 1200 * Math.log2(after / before);
}

function known(change: ReturnType<typeof changeOfPartials>) {
  if (!change.known) throw new Error(change.reason);
  return change;
}

describe('changeOfPartials', () => {
  it('reads the same from high partials of a stiff string as from partial 1', () => {
    const afterHz = centsToHz(-12, 220);
    const [before, after] = [stiffString(220, 16), stiffString(afterHz, 16)];
    const high = known(changeOfPartials(before.slice(8), after.slice(8), B));
    // The model is exact for small changes; of 12 cents a thousandth is left.
    expect(Math.abs(high.cents - truthCents(220, afterHz))).toBeLessThan(0.012);
  });

  it('holds the truth in 95 of 100 within two uncertainties, which many partials narrow', () => {
    const random = seededRandom(61);
    const afterHz = centsToHz(-3, 220);
    const changes = Array.from({ length: 400 }, () =>
      known(changeOfPartials(stiffString(220, 8, random), stiffString(afterHz, 8, random), B)),
    );
    const truth = truthCents(220, afterHz);
    const held = changes.filter(
      ({ cents, standardUncertaintyCents }) => Math.abs(cents - truth) < 1.96 * standardUncertaintyCents,
    );
    expect(held.length / changes.length).toBeGreaterThan(0.9);
    const alone = known(changeOfPartials(stiffString(220, 1, random), stiffString(afterHz, 1, random), B));
    expect(changes[0]!.standardUncertaintyCents).toBeLessThan(0.5 * alone.standardUncertaintyCents);
  });

  it('does not follow one partial that went astray', () => {
    const random = seededRandom(62);
    const before = stiffString(220, 8, random);
    const after = stiffString(220, 8, random).map((partial) =>
      partial.partialNumber === 5 ? { ...partial, hz: centsToHz(15, partial.hz) } : partial,
    );
    const change = known(changeOfPartials(before, after, B));
    expect(Math.abs(change.cents)).toBeLessThan(0.15);
    expect(change.partialCount).toBe(7);
  });

  it('turns round with the dates', () => {
    const random = seededRandom(63);
    const [a, b] = [stiffString(220, 6, random), stiffString(centsToHz(4, 220), 6, random)];
    expect(known(changeOfPartials(b, a, B)).cents).toBeCloseTo(-known(changeOfPartials(a, b, B)).cents, 9);
  });

  it('gives the only common partial’s own change, and nothing where there is none', () => {
    const [first, second, third] = stiffString(220, 3);
    const change = known(changeOfPartials([first!, second!], [second!, third!], B));
    expect(change).toMatchObject({ cents: 0, partialCount: 1 });
    expect(changeOfPartials([first!], [third!], B)).toEqual({ known: false, reason: 'no-common-partial' });
  });

  it('refuses a frequency that is none and a B below zero', () => {
    const [first] = stiffString(220, 1);
    expect(() => changeOfPartials([first!], [{ ...first!, hz: 0 }], B)).toThrow(/above zero.*0/);
    expect(() => changeOfPartials([first!], [first!], -1)).toThrow(/inharmonicityB.*-1/);
  });
});
