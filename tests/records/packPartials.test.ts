import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { packingFault } from '../../src/records/packingFault.ts';
import { packPartials, unpackPartials } from '../../src/records/packPartials.ts';
import { rowToTake, takeToRow } from '../../src/records/rows.ts';
import {
  anyPartial,
  anyReading,
  exampleInstrument,
  examplePartial,
  exampleSurvey,
  exampleTake,
  exampleVisit,
} from './exampleRecords.ts';

const RUNS = { numRuns: 300, seed: 20260 };

describe('packPartials', () => {
  it('unpacks to exactly what was packed, whatever the partials', () => {
    fc.assert(
      fc.property(fc.array(anyPartial, { maxLength: 40 }), (partials) => {
        const packed = packPartials(partials);
        expect(packingFault(packed)).toBeUndefined();
        expect(unpackPartials(packed)).toStrictEqual(partials);
      }),
      RUNS,
    );
  });

  it('takes nine, three and four numbers for a partial, a beat and a component', () => {
    const beat = { rateHz: 0.6, rateStandardUncertaintyHz: 0.01, depthDb: 7 };
    const packed = packPartials([{ ...examplePartial(1, 440), beats: [beat, beat] }, examplePartial(2, 880)]);
    expect([packed.partials.length, packed.beats.length, packed.components.length]).toEqual([18, 6, 8]);
  });

  it('keeps apart a decay of nothing and a decay that was not measured', () => {
    const partial = { ...examplePartial(1, 440), promptDecayTimeS: 0, afterDecayTimeS: null };
    expect(unpackPartials(packPartials([partial]))[0]).toMatchObject({ promptDecayTimeS: 0, afterDecayTimeS: null });
  });
});

describe('packingFault', () => {
  const sound = packPartials([examplePartial(1, 440), examplePartial(2, 880)]);
  const withNumber = (index: number, value: number): Float64Array => {
    const table = sound.partials.slice();
    table[index] = value;
    return table;
  };

  it.each([
    ['a table cut short', { partials: sound.partials.slice(0, 17) }, /not whole rows/],
    ['fewer components than counted', { components: sound.components.slice(0, 4) }, /4 numbers for 2 components/],
    ['beats that nobody counted', { beats: new Float64Array(3) }, /3 numbers for 0 beats/],
    ['a count that is half', { partials: withNumber(8, 0.5) }, /not a count/],
    ['a count below zero', { partials: withNumber(7, -1) }, /not a count/],
    ['a frequency that is no number', { partials: withNumber(1, Number.NaN) }, /not a number/],
    ['a component that is no number', { components: sound.components.map(() => Number.NaN) }, /component/],
  ])('finds %s', (_, damage, words) => {
    expect(packingFault(sound)).toBeUndefined();
    expect(packingFault({ ...sound, ...damage })).toMatch(words);
  });
});

it('a take comes back from its row exactly as it was', () => {
  const survey = exampleSurvey(exampleVisit(exampleInstrument()));
  fc.assert(
    fc.property(anyReading, fc.boolean(), (reading, isKept) => {
      const take = exampleTake(survey, { reading, isKept });
      expect(rowToTake(takeToRow(take))).toStrictEqual(take);
    }),
    RUNS,
  );
});
