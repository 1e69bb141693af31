import { describe, expect, it } from 'vitest';
import { groundSentence, isLimit, type VerdictGround } from '../../../src/stability/drift/verdictGrounds.ts';

const slipping = (midi: number) => ({ midi, stringPosition: 2 as const, centsPerYear: -2.44 });

describe('a ground in English', () => {
  it.each<[VerdictGround, string]>([
    [
      { kind: 'zone-slips', fromMidi: 71, toMidi: 81, centsPerYear: -1.84, isAccelerating: true },
      'B4 to A5 go flat together by 1.8 cents a year, faster each year',
    ],
    [
      { kind: 'pins-slip', pins: [slipping(72)] },
      'C5 string 2 (-2.4 cents a year) goes flat by itself, again and again',
    ],
    [
      { kind: 'compared', intervalCount: 1, years: 0.61 },
      '1 interval between an as-left and the next as-found, 0.6 years in all',
    ],
    [
      { kind: 'has-to-repeat', visitCount: 2 },
      'a slip has to repeat itself; 2 more visits with as-found and as-left would tell',
    ],
  ])('%o', (ground, sentence) => {
    expect(groundSentence(ground)).toBe(sentence);
  });

  it('names six strings and counts the others', () => {
    const sentence = groundSentence({ kind: 'pins-suspected', pins: [60, 61, 62, 63, 64, 65, 66, 67].map(slipping) });
    expect(sentence).toContain('F4 string 2');
    expect(sentence).not.toContain('F#4');
    expect(sentence).toContain('and 2 more went flat');
  });
});

it('what limits a verdict is told from what supports it', () => {
  expect(isLimit({ kind: 'season-inferred' })).toBe(true);
  expect(isLimit({ kind: 'too-short', years: 0.2 })).toBe(false);
});
