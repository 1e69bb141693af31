import { describe, expect, it } from 'vitest';
import { bestTakeIndex } from '../../src/survey/takeChoice.ts';
import { type PlainReading, plainReading } from './plainReading.ts';

const CASES: { why: string; takes: Omit<PlainReading, 'midi'>[]; best: number | undefined }[] = [
  { why: 'usable before sharper', takes: [{ isUsable: false, uncertaintyHz: 0.001 }, { uncertaintyHz: 1 }], best: 1 },
  {
    why: 'without faults before sharper',
    takes: [{ uncertaintyHz: 1 }, { faults: ['speech'], uncertaintyHz: 0.001 }],
    best: 0,
  },
  { why: 'usable with a fault before unusable', takes: [{ faults: ['speech'] }, { isUsable: false }], best: 0 },
  {
    why: 'the smaller uncertainty',
    takes: [{ uncertaintyHz: 0.02 }, { uncertaintyHz: 0.01 }, { uncertaintyHz: 0.03 }],
    best: 1,
  },
  {
    why: 'smaller uncertainty before longer',
    takes: [{ uncertaintyHz: 0.01 }, { uncertaintyHz: 0.02, durationS: 9 }],
    best: 0,
  },
  { why: 'the longer of equals', takes: [{ durationS: 3 }, { durationS: 2 }], best: 0 },
  { why: 'the later of equals', takes: [{}, {}, {}], best: 2 },
  { why: 'none of none', takes: [], best: undefined },
];

describe('bestTakeIndex', () => {
  it.each(CASES)('takes $why', ({ takes, best }) => {
    expect(bestTakeIndex(takes.map((facts) => plainReading({ midi: 60, ...facts })))).toBe(best);
  });
});
