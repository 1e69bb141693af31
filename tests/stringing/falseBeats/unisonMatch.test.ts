import { expect, it } from 'vitest';
import { unisonMatch } from '../../../src/stringing/falseBeats/unisonMatch.ts';
import { beatReading } from '../beatReading.ts';

const A4 = { midi: 69, partialCount: 6 };

// 1.5 cents at A4 beat 0.3814 times a second on partial 1 (440·(2^(1.5/1200) − 1), GNU bc).
it('tells how far strings are apart, and their beat on partial 1', () => {
  const match = unisonMatch([
    beatReading({ ...A4, stringPosition: 1 }),
    beatReading({ ...A4, stringPosition: 3, offsetCents: 1.5 }),
    beatReading({ ...A4, stringPosition: 2, offsetCents: 0.05 }),
  ]);
  expect(match.known && match.pairs.map(({ strings, isApart }) => [...strings, isApart])).toEqual([
    [1, 2, false],
    [1, 3, true],
    [2, 3, true],
  ]);
  const pair = match.known ? match.pairs[1] : undefined;
  expect(pair?.cents).toBeCloseTo(1.5, 9);
  expect(pair?.beatHz).toBeCloseTo(0.3814, 4);
});

it('tells what stays on higher partials when partials 1 agree', () => {
  const [b1, b2] = [7e-4, 7.7e-4];
  const match = unisonMatch([
    beatReading({ ...A4, stringPosition: 1, inharmonicityB: b1 }),
    beatReading({ ...A4, stringPosition: 2, inharmonicityB: b2, offsetCents: 3 }),
  ]);
  const partial = (b: number) => (6 * 440 * Math.sqrt(1 + 36 * b)) / Math.sqrt(1 + b);
  const left = match.known ? match.pairs[0]?.left.find(({ partialNumber }) => partialNumber === 6) : undefined;
  expect(left?.beatHz).toBeCloseTo(partial(b2) - partial(b1), 6);
  expect(match).toMatchObject({ leftBeatHz: left?.beatHz });
});

it('leaves nothing between strings alike, and says nothing where B was not measured', () => {
  const alike = [1, 2].map((position) =>
    beatReading({ ...A4, stringPosition: position as 1 | 2, inharmonicityB: 7e-4 }),
  );
  expect(unisonMatch(alike)).toMatchObject({ known: true, leftBeatHz: null });
  expect(unisonMatch(alike.map((reading) => ({ ...reading, inharmonicityB: null })))).toMatchObject({
    pairs: [{ left: [] }],
  });
});

it('needs two strings, each alone, of one note', () => {
  const one = beatReading({ ...A4, stringPosition: 1 });
  expect(unisonMatch([one, beatReading({ ...A4, stringPosition: 0 })])).toEqual({
    known: false,
    reason: 'fewer-than-two-strings',
  });
  expect(() => unisonMatch([one, beatReading({ midi: 70, stringPosition: 2 })])).toThrow(/one note/);
});
