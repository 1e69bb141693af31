import { describe, expect, it } from 'vitest';
import { beyondChance, chanceBeyond } from '../../../src/analysis/compass/standsOut.ts';

describe('beyondChance', () => {
  // Y. Benjamini, Y. Hochberg, J. R. Stat. Soc. B 57 (1995): of these fifteen, the first four are called at 0.05.
  const PUBLISHED = [
    0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.324, 0.4262, 0.5719, 0.6528, 0.759, 1,
  ];

  it('calls the four of the published example, in whatever order they stand', () => {
    expect(beyondChance(PUBLISHED, 0.05).filter(Boolean)).toHaveLength(4);
    const backwards = [...PUBLISHED].reverse();
    expect(
      beyondChance(backwards, 0.05)
        .map((called, index) => (called ? backwards[index] : 0))
        .filter(Boolean),
    ).toEqual([0.0095, 0.0019, 0.0004, 0.0001]);
  });

  it('calls one that is not small enough alone where those after it carry it', () => {
    expect(beyondChance([0.03, 0.04], 0.05)).toEqual([true, true]);
    expect(beyondChance([0.03, 0.9], 0.05)).toEqual([false, false]);
  });

  it('calls nothing among nothing', () => expect(beyondChance([], 0.05)).toEqual([]));
});

// Reference: Student's t, upper tail; python3, scipy 1.17.1 `scipy.stats.t.sf(ratio, freedom)`, the last four `norm.sf(ratio)`.
const REFERENCE = [
  { freedom: 5, ratio: 0.5, chance: 3.191494e-1 },
  { freedom: 5, ratio: 3, chance: 1.504962e-2 },
  { freedom: 5, ratio: 8, chance: 2.464533e-4 },
  { freedom: 10, ratio: 1.5, chance: 8.225366e-2 },
  { freedom: 10, ratio: 5, chance: 2.686668e-4 },
  { freedom: 30, ratio: 3, chance: 2.694982e-3 },
  { freedom: 30, ratio: 8, chance: 3.132911e-9 },
  { freedom: 80, ratio: 3, chance: 1.799199e-3 },
  { freedom: 80, ratio: 5, chance: 1.659903e-6 },
  { freedom: 80, ratio: 8, chance: 4.043969e-12 },
  { freedom: 1e9, ratio: 0.7, chance: 2.419637e-1 },
  { freedom: 1e9, ratio: 1.9, chance: 2.871656e-2 },
  { freedom: 1e9, ratio: 2.1, chance: 1.786442e-2 },
  { freedom: 1e9, ratio: 9, chance: 1.128588e-19 },
];

describe('chanceBeyond', () => {
  it.each(REFERENCE)('is near the exact chance at $ratio with $freedom degrees of freedom', (row) => {
    const tolerance = row.freedom < 10 ? 0.15 : 0.06;
    expect(Math.abs(chanceBeyond(row.ratio, row.freedom) / row.chance - 1)).toBeLessThan(tolerance);
  });

  it('is a half at no departure, and falls all the way', () => {
    expect(chanceBeyond(0, 20)).toBeCloseTo(0.5, 12);
    const chances = Array.from({ length: 100 }, (_, index) => chanceBeyond(index / 5, 20));
    expect(chances.every((chance, index) => index === 0 || chance < chances[index - 1]!)).toBe(true);
  });
});
