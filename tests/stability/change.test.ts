import { describe, expect, it } from 'vitest';
import { centsToHz, uncertaintyHzToCents } from '../../src/piano/cents.ts';
import { changeBetween, changeOfString } from '../../src/stability/change.ts';
import { seededRandom } from '../support/seededRandom.ts';
import { partial1Reading, stiffPartials, stringReading } from './stringReading.ts';

describe('changeOfString', () => {
  it('is the cents between two frequencies where only partial 1 is known', () => {
    // 1200·log2(441/440) = 3.93016 cents. Uncertainties 0.03 and 0.04 Hz: 0.03·3.93452/440… by hand
    // 1200/ln 2 = 1731.234; 1731.234·0.03/440 = 0.118039; 1731.234·0.04/441 = 0.157028; √(0.118039² + 0.157028²) = 0.196445.
    const before = stringReading({ partial1Hz: 440, partial1StandardUncertaintyHz: 0.03 });
    const after = stringReading({ partial1Hz: 441, partial1StandardUncertaintyHz: 0.04 });
    const change = changeOfString(before, after);
    expect(change.changeCents).toBeCloseTo(3.93016, 4);
    expect(change.standardUncertaintyCents).toBeCloseTo(0.196445, 5);
    expect(change).toMatchObject({ midi: 69, stringPosition: 2, method: 'partial 1', partialCount: 1 });
  });

  it('weights partials by their uncertainty', () => {
    // Partial 1 moves 1200·log2(441/440) = 3.9302 cents, partial 2 1200·log2(882.2/880) = 4.3227 cents, B unknown. Uncertainties
    // 0.1 and 0.1 Hz on both sides make √2·1731.234·0.1/440.5 = 0.5558 and 0.2778 cents: weights 1 : 4, so
    // (3.9302 + 4·4.3227)/5 = 4.2442 (the scatter between the two is smaller than their uncertainties and adds nothing).
    const before = stringReading({
      partials: [
        [1, 440, 0.1],
        [2, 880, 0.1],
      ],
    });
    const after = stringReading({
      partials: [
        [1, 441, 0.1],
        [2, 882.2, 0.1],
      ],
    });
    const change = changeOfString(before, after);
    expect(change.method).toBe('partials');
    // The biweight takes up to 2 % of weight from partials within half a standard uncertainty.
    expect(change.changeCents).toBeCloseTo(4.2442, 2);
    // 1/√(1/0.5558² + 1/0.2778²) = 0.2485.
    expect(change.standardUncertaintyCents / 0.2485).toBeCloseTo(1, 1);
  });

  it.each([-30, -8, -0.5, 3, 40])(
    'recovers a change of %s cents of partial 1 exactly, stiff as the string is',
    (cents) => {
      const [f0Hz, stiffness] = [440, 0.002];
      const movedB = (f0: number): number => (stiffness * f0Hz ** 2) / f0 ** 2;
      // The f0 at which partial 1 has moved by `cents`: f1² = f0² + B·f0², and B·f0² stays.
      const partial1Hz = centsToHz(cents, f0Hz * Math.sqrt(1 + stiffness));
      const movedF0Hz = Math.sqrt(partial1Hz ** 2 - stiffness * f0Hz ** 2);
      const before = stringReading({ inharmonicityB: stiffness, partials: stiffPartials(f0Hz, stiffness, 9) });
      const after = stringReading({
        inharmonicityB: movedB(movedF0Hz),
        partials: stiffPartials(movedF0Hz, movedB(movedF0Hz), 9),
      });
      // The factor is that of small changes; with the mean B of both sides the rest is of third order.
      expect(changeOfString(before, after).changeCents).toBeCloseTo(cents, 3);
    },
  );

  it('counts against the string itself, whatever the pitch standard of either survey', () => {
    const partials = stiffPartials(435, 0.0007, 8);
    const before = stringReading({ pitchStandardHz: 435, inharmonicityB: 0.0007, partials });
    const after = stringReading({ pitchStandardHz: 440, inharmonicityB: 0.0007, partials });
    expect(changeOfString(before, after).changeCents).toBeCloseTo(0, 9);
  });

  it('is the opposite when the surveys change places', () => {
    const [low, high] = [438, 441.3].map((f0Hz) =>
      stringReading({ inharmonicityB: 300 / f0Hz ** 2, partials: stiffPartials(f0Hz, 300 / f0Hz ** 2, 6) }),
    );
    expect(changeOfString(low!, high!).changeCents).toBeCloseTo(-changeOfString(high!, low!).changeCents, 9);
  });

  it('compares only partials that both readings have, and falls back to partial 1 below two', () => {
    const before = stringReading({
      partials: [
        [1, 440, 0.01],
        [2, 880.5, 0.01],
        [3, 1322, 0.01],
      ],
    });
    const shared = stringReading({
      partials: [
        [2, 881.5, 0.01],
        [3, 1323.5, 0.01],
        [7, 3100, 0.01],
      ],
      partial1Hz: 440,
    });
    expect(changeOfString(before, shared)).toMatchObject({ method: 'partials', partialCount: 2 });
    const one = stringReading({ partials: [[3, 1323.5, 0.01]], partial1Hz: 440.2 });
    expect(changeOfString(before, one).method).toBe('partial 1');
    expect(changeOfString(before, one).changeCents).toBeCloseTo(1200 * Math.log2(440.2 / 440), 9);
  });

  it('is not moved by one bad partial, even one that claims to be the surest', () => {
    const partials = stiffPartials(220, 0.0003, 8);
    const before = stringReading({ midi: 57, inharmonicityB: 0.0003, partials });
    const bad = partials.map(([number, hz, sigma]): [number, number, number] =>
      number === 5 ? [number, centsToHz(9, hz), 1e-6] : [number, hz, sigma],
    );
    const change = changeOfString(before, stringReading({ midi: 57, inharmonicityB: 0.0003, partials: bad }));
    expect(Math.abs(change.changeCents)).toBeLessThan(0.01);
    expect(change.partialCount).toBe(7);
  });

  it.each([1, 2, 3])('states an uncertainty that holds 95 % of noisy cases (seed %i)', (seed) => {
    const random = seededRandom(seed);
    const trials = 400;
    let covered = 0;
    for (let trial = 0; trial < trials; trial += 1) {
      const truth = 12 * random.normal();
      const partials = stiffPartials(220, 0, 10).map(([number, hz]): [number, number, number] => {
        const sigmaHz = 0.02 * (0.5 + 2 * random.uniform());
        return [number, hz, sigmaHz];
      });
      const read = (shiftCents: number) =>
        partials.map(([number, hz, sigma]): [number, number, number] => [
          number,
          centsToHz(shiftCents, hz) + sigma * random.normal(),
          sigma,
        ]);
      const change = changeOfString(
        stringReading({ midi: 57, inharmonicityB: 0, partials: read(0) }),
        stringReading({ midi: 57, inharmonicityB: 0, partials: read(truth) }),
      );
      if (Math.abs(change.changeCents - truth) < 1.96 * change.standardUncertaintyCents) covered += 1;
    }
    // 95 % of 400 is 380 with a standard deviation of 4.4; the robust scatter is itself uncertain, which costs a few per cent.
    expect(covered / trials).toBeGreaterThan(0.9);
    expect(covered / trials).toBeLessThan(0.995);
  });

  it('grows its uncertainty where the partials disagree by more than they claim', () => {
    const random = seededRandom(11);
    const clean = stiffPartials(220, 0, 10, 0.002);
    const scattered = clean.map(([n, hz, sigma]): [number, number, number] => [
      n,
      centsToHz(random.normal(), hz),
      sigma,
    ]);
    const before = stringReading({ midi: 57, inharmonicityB: 0, partials: clean });
    const steady = changeOfString(before, stringReading({ midi: 57, inharmonicityB: 0, partials: clean }));
    const change = changeOfString(before, stringReading({ midi: 57, inharmonicityB: 0, partials: scattered }));
    expect(steady.standardUncertaintyCents).toBeLessThan(0.02);
    // One cent of scatter over ten partials: about 1/√10 = 0.32 cents.
    expect(change.standardUncertaintyCents).toBeGreaterThan(0.16);
    expect(change.standardUncertaintyCents).toBeLessThan(0.64);
    expect(uncertaintyHzToCents(0.002, 220)).toBeLessThan(0.02);
  });

  it('refuses readings of two different strings, and a frequency of zero', () => {
    expect(() => changeOfString(stringReading({ midi: 69 }), stringReading({ midi: 70 }))).toThrow(/same string/);
    expect(() => changeOfString(stringReading({ partial1Hz: 0 }), stringReading({}))).toThrow(/above zero, got 0/);
  });
});

describe('changeBetween', () => {
  it('pairs note with note and string with string, in order, and names what has no partner', () => {
    const before = [partial1Reading(60, 0), partial1Reading(50, 0), partial1Reading(60, 0, 1), partial1Reading(70, 0)];
    const after = [partial1Reading(60, 2, 1), partial1Reading(60, -1), partial1Reading(50, 3), partial1Reading(80, 0)];
    const change = changeBetween(before, after);
    expect(
      change.notes.map(({ midi, stringPosition, changeCents }) => [midi, stringPosition, +changeCents.toFixed(6)]),
    ).toEqual([
      [50, 2, 3],
      [60, 1, 2],
      [60, 2, -1],
    ]);
    expect(change.missing).toEqual([{ midi: 70, stringPosition: 2 }]);
    expect(change.added).toEqual([{ midi: 80, stringPosition: 2 }]);
  });
});
