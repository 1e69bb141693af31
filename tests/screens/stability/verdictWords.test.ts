import { describe, expect, it } from 'vitest';
import {
  contraryReasons,
  nextSentences,
  ruledOutSentence,
  supportingReasons,
  verdictSentence,
} from '../../../src/screens/stability/verdictWords.ts';
import type { VerdictState } from '../../../src/stability/drift/verdict.ts';
import type { VerdictGround } from '../../../src/stability/drift/verdictGrounds.ts';
import { exampleDrift, pin } from './exampleDrift.ts';

const plain = (text: string) => text.replace(/[\u2009\u00a0]/g, ' ');
const verdict = (state: VerdictState, grounds: VerdictGround[] = []) => ({
  state,
  grounds,
  reasons: [],
  slipRuledOutAboveCentsPerYear: 0.6,
});
const zone = (fromMidi: number, toMidi: number) => ({
  fromMidi,
  toMidi,
  centsPerYear: -4,
  standardUncertainty: 0.3,
  probability: 0.9,
  isAccelerating: false,
  fromInterval: 0,
});

describe('the verdict’s sentence', () => {
  it('says how fast a slip is ruled out where the block holds', () => {
    expect(plain(verdictSentence(exampleDrift()))).toContain('faster than 0.6 cents a year are ruled out');
  });

  it('names the zone and counts the pins outside it, with the probability that one of them is real', () => {
    const pins = [pin(72, { isFlagged: true, probability: 0.9 }), pin(40, { isFlagged: true, probability: 0.5 })];
    const drift = exampleDrift({ pins, zones: [zone(71, 80)], verdict: verdict('giving way') });
    const sentence = plain(verdictSentence(drift));
    expect(sentence).toContain('The notes B4 to G♯5 and one string');
    expect(sentence).toContain('more than 99 %');
  });

  it('names the surest suspect where it is to be watched', () => {
    const pins = [pin(60, { probability: 0.4 }), pin(61, { probability: 0.8 })];
    const sentence = plain(verdictSentence(exampleDrift({ pins, verdict: verdict('watch') })));
    expect(sentence).toContain('C♯4');
    expect(sentence).toContain('80 %');
  });

  it('does not pretend where there is not enough evidence', () => {
    expect(verdictSentence(exampleDrift({ verdict: verdict('not enough evidence') }))).toMatch(/cannot tell/);
  });
});

describe('the grounds', () => {
  const slips = { midi: 71, stringPosition: 0 as const, centsPerYear: -2.41 };
  const grounds: VerdictGround[] = [
    { kind: 'pins-slip', pins: [slips] },
    { kind: 'others-steady', stringCount: 80, ruledOutCentsPerYear: 0.6 },
  ];

  it('stand for and against, each once', () => {
    const drift = exampleDrift({ verdict: verdict('giving way', grounds) });
    expect(supportingReasons(drift).map(plain)).toEqual([
      'B4 (2.4 cents a year) goes flat by itself, again and again.',
    ]);
    expect(contraryReasons(drift).map(plain)).toEqual([
      'The other 80 strings keep their places, slips above 0.6 cents a year ruled out.',
    ]);
  });

  it('against a holding block are its doubtful strings and the readings set aside', () => {
    const pins = [pin(60, { probability: 0.45, centsPerYear: -0.8, standardUncertainty: 0.4 }), pin(61)];
    const because = { kind: 'left-off' as const, offCents: 9 };
    const outliers = [{ visitedOn: '2021-01-01', midi: 60, stringPosition: 2 as const, cents: 9, because, reason: '' }];
    const [suspect, aside] = contraryReasons(exampleDrift({ pins, outliers })).map(plain);
    expect(suspect).toBe('C4: −0.80 ± 0.40 cents a year, probability 45 %.');
    expect(aside).toMatch(/^One single reading/);
  });

  it('say what is ruled out, or that nothing is', () => {
    expect(plain(ruledOutSentence(exampleDrift()))).toContain('0.6 cents a year');
    const none = { ...verdict('not enough evidence'), slipRuledOutAboveCentsPerYear: null };
    expect(ruledOutSentence(exampleDrift({ verdict: none }))).toMatch(/No slip/);
  });
});

it('what would settle it names the pins as a range where their notes are neighbours', () => {
  const pins = [62, 60, 61].map((midi) => pin(midi, { isFlagged: true, probability: 0.95 }));
  expect(nextSentences(exampleDrift({ pins }), 1)[0]).toContain('C4 to D4');
});
