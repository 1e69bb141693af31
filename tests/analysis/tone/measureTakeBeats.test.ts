import { describe, expect, it } from 'vitest';
import { centsToHz } from '../../../src/piano/cents.ts';
import { measured, RATE_HZ, readingOf, takeOf } from '../takes.ts';

describe('one string', () => {
  it.each([
    { midi: 45, partialNumber: 3, splitHz: 0.8, ratio: 0.4, durationS: 3 },
    { midi: 60, partialNumber: 2, splitHz: 1.4, ratio: 0.5, durationS: 3 },
    { midi: 72, partialNumber: 1, splitHz: 0.7, ratio: 0.3, durationS: 2.5 },
    { midi: 84, partialNumber: 1, splitHz: 1.9, ratio: 0.5, durationS: 2 },
    { midi: 92, partialNumber: 1, splitHz: 3.1, ratio: 0.4, durationS: 1.5 },
    { midi: 84, partialNumber: 2, splitHz: 6.5, ratio: 0.35, durationS: 1.5 },
  ])('MIDI $midi: a false beat of $splitHz Hz on partial $partialNumber is found within 3 %', (row) => {
    const { midi, durationS, ...beat } = row;
    const { reading } = measured(
      { strings: [{ midi, falseBeats: [beat] }], durationS, snrDb: 35, seed: midi },
      { stringPosition: 1 },
    );
    expect(reading.beating.kind).toBe('false beat');
    expect(reading.beating.partialNumbers).toContain(row.partialNumber);
    expect(Math.abs(reading.beating.rateHz! / row.splitHz - 1)).toBeLessThan(0.03);
    const depthDb = 20 * Math.log10((1 + row.ratio) / (1 - row.ratio));
    expect(Math.abs(reading.beating.depthDb! / depthDb - 1)).toBeLessThan(0.1);
    const others = reading.partials.filter(
      (partial) => partial.partialNumber !== row.partialNumber && partial.snrDb > 20,
    );
    expect(others.flatMap((partial) => partial.beats)).toEqual([]);
  });

  it.each([36, 57, 69, 81, 93])('MIDI %s: a decay in two stages is no beat', (midi) => {
    const aftersound = { ratio: 0.12, slowDownFactor: 4 };
    const { reading, truth } = measured(
      { strings: [{ midi, aftersound, partialCount: 6 }], durationS: 3, snrDb: 45, seed: midi },
      { stringPosition: 1 },
    );
    expect(reading.partials.flatMap((partial) => partial.beats)).toEqual([]);
    expect(['none', 'undetermined']).toContain(reading.beating.kind);
    if (midi < 69) return;
    // Where the take is long enough for the slow part to show.
    const [first] = reading.partials;
    expect(first!.promptDecayTimeS! / truth.strings[0]!.decayTimeS[0]!).toBeCloseTo(1, 1);
    expect(first!.afterDecayTimeS! / (4 * truth.strings[0]!.decayTimeS[0]!)).toBeCloseTo(1, 0.5);
  });

  it.each([48, 69, 84])('MIDI %s without a beat is said to have none', (midi) => {
    const { reading } = measured({ strings: [{ midi }], durationS: 2, snrDb: 35, seed: midi }, { stringPosition: 1 });
    expect(reading.beating).toMatchObject({ kind: 'none', rateHz: null, depthDb: null, partialNumbers: [] });
  });

  it('MIDI 108 at 20 dB is not assessable', () => {
    const { reading } = measured(
      { strings: [{ midi: 108 }], durationS: 1, snrDb: 20, seed: 108 },
      { stringPosition: 1 },
    );
    expect(reading.beating).toMatchObject({ kind: 'undetermined', reason: expect.stringMatching(/not assessable/) });
  });

  it.each([
    { midi: 69, snrDb: 45, durationS: 2 },
    { midi: 88, snrDb: 45, durationS: 2 },
    { midi: 96, snrDb: 20, durationS: 1.2 },
    { midi: 102, snrDb: 20, durationS: 1.2 },
    { midi: 108, snrDb: 45, durationS: 1.2 },
  ])(
    'MIDI $midi at $snrDb dB: a beat as slow and shallow as “none” promises to show, does show',
    ({ midi, ...take }) => {
      const clean = measured({ strings: [{ midi }], ...take, seed: midi }, { stringPosition: 1 }).reading;
      if (clean.beating.kind !== 'none') return;
      const promisedHz = Number(/([\d.]+) a second/.exec(clean.beating.reason)![1]);
      const falseBeats = [1, 2, 3].map((partialNumber) => ({ partialNumber, splitHz: 1.1 * promisedHz, ratio: 0.19 }));
      const { reading } = measured({ strings: [{ midi, falseBeats }], ...take, seed: midi }, { stringPosition: 1 });
      expect(`${promisedHz} Hz: ${reading.beating.kind}`).not.toMatch(/none$/);
    },
  );
});

describe('an open unison', () => {
  it.each([
    { midi: 52, cents: 4 },
    { midi: 60, cents: -2.5 },
    { midi: 69, cents: 1.5 },
    { midi: 76, cents: 3 },
    { midi: 72, cents: -5 },
  ])('MIDI $midi with a string $cents cents off is out of tune, and by how much', ({ midi, cents }) => {
    const strings = [{ midi }, { midi, offsetCents: cents }];
    const { reading, truth } = measured({ strings, durationS: 3, snrDb: 40, seed: midi });
    expect(reading.beating.kind).toBe('unison');
    const rateHz = Math.abs(centsToHz(cents, truth.strings[0]!.partialHz[0]!) - truth.strings[0]!.partialHz[0]!);
    expect(Math.abs(reading.partials[0]!.beats[0]!.rateHz / rateHz - 1)).toBeLessThan(0.03);
    const [low, high] = reading.unisonStringsCents!;
    expect(Math.abs(high! - low! - Math.abs(cents))).toBeLessThan(0.15);
  });

  it.each([1, 2, 84])('MIDI 84 with a string 5 cents off is not cut at its first trough (%s)', (seed) => {
    const strings = [{ midi: 84 }, { midi: 84, offsetCents: 5 }];
    const { reading } = measured({ strings, durationS: 3, snrDb: 40, seed });
    expect(reading.beating.kind).toBe('unison');
    expect(reading.quality.faults).toEqual([]);
  });

  it.each([
    { midi: 60, partialNumber: 2, splitHz: 1.3 },
    { midi: 72, partialNumber: 1, splitHz: 1.1 },
    { midi: 79, partialNumber: 2, splitHz: 2.4 },
  ])(
    'MIDI $midi in tune but with a false beat on partial $partialNumber is told apart from that',
    ({ midi, ...beat }) => {
      const falseBeats = [{ ...beat, ratio: 0.5 }];
      const { reading } = measured({ strings: [{ midi, falseBeats }], durationS: 2.5, snrDb: 40, seed: midi });
      expect(reading.beating).toMatchObject({ kind: 'false beat', partialNumbers: [beat.partialNumber] });
      expect(reading.unisonStringsCents).toBeNull();
    },
  );

  it('finds the beat of an A4 whose strings stand 1.5 cents apart: 0.3814, 0.7628 and 1.5256 a second on partials 1, 2 and 4', () => {
    // 440·n·(2^(1.5/1200) − 1); partials without stiffness stand at n·440.
    const strings = [0, 1.5].map((offsetCents) => ({ midi: 69, offsetCents, inharmonicityB: 1e-9, partialCount: 6 }));
    const { samples, truth } = takeOf({ strings, durationS: 4, snrDb: 45 });
    const reading = readingOf(samples, RATE_HZ, { midi: 69, onsetIndex: truth.onsetIndex });
    for (const [n, rateHz] of [
      [1, 0.3814],
      [2, 0.7628],
      [4, 1.5256],
    ] as const) {
      const partial = reading.partials.find((row) => row.partialNumber === n)!;
      expect(Math.abs(partial.beats[0]!.rateHz - rateHz)).toBeLessThan(0.01);
    }
  });
});
