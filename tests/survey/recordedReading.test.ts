import { describe, expect, it } from 'vitest';
import { uncertaintyHzToCents } from '../../src/piano/cents.ts';
import { recordedStrings } from '../../src/survey/recordedReading.ts';
import { type Strike, struckReading } from './struckReading.ts';

const recorded = (kept: Strike, ...others: Strike[]) =>
  recordedStrings([{ kept: struckReading(kept), others: others.map(struckReading) }]).strings[0]!;

describe('the reading that the record keeps', () => {
  it('carries what strikes differ by where that is more than the fit says, in cents and in Hz', () => {
    const { reading, repeatabilityCents } = recorded({ cents: 1, ownCents: 0.02 }, { cents: 1.4 });
    expect(repeatabilityCents).toBeCloseTo(0.4 / Math.SQRT2, 12);
    expect(reading.offsetStandardUncertaintyCents).toBe(repeatabilityCents);
    const { partial1StandardUncertaintyHz, partial1Hz } = reading;
    expect(uncertaintyHzToCents(partial1StandardUncertaintyHz, partial1Hz)).toBeCloseTo(repeatabilityCents!, 9);
  });

  it('keeps the fit’s uncertainty where that is larger', () => {
    const kept = struckReading({ cents: 1, ownCents: 2 });
    const { strings } = recordedStrings([{ kept, others: [struckReading({ cents: 1.1, ownCents: 2 })] }]);
    expect(strings[0]?.reading).toEqual(kept);
    expect(strings[0]?.repeatabilityCents).toBeCloseTo(0.0707, 3);
  });

  it('is the take as measured in everything else, and where nothing can be compared', () => {
    const kept = struckReading({ cents: 1 });
    const { partial1StandardUncertaintyHz, offsetStandardUncertaintyCents } = kept;
    const { reading } = recorded({ cents: 1 }, { cents: 2 });
    expect({ ...reading, partial1StandardUncertaintyHz, offsetStandardUncertaintyCents }).toEqual(kept);
    expect(recorded({ cents: 1 }, { cents: 2, levelDbfs: -40 })).toEqual({
      reading: kept,
      strikes: null,
      repeatabilityCents: null,
    });
    expect(recorded({ cents: 1 }).reading).toEqual(kept);
  });

  it('learns from other notes of the survey where two strikes of one happened to agree', () => {
    const strings = [60, 61, 62, 63, 64].map((midi) => ({
      kept: struckReading({ midi, cents: 0 }),
      others: [struckReading({ midi, cents: midi === 60 ? 0 : 0.5 })],
    }));
    const result = recordedStrings(strings);
    expect(result.pooled[0]).toMatchObject({ register: 'all', repeatCount: 5, noteCount: 5 });
    // By hand: four variances of 0.125 and one of 0.
    expect(result.strings[0]!.reading.offsetStandardUncertaintyCents).toBeCloseTo(Math.sqrt(0.1), 12);
  });

  it('does not lend a string that was struck once what others scatter by', () => {
    const once = struckReading({ midi: 70, cents: 0 });
    const others = [60, 61, 62, 63].map((midi) => ({
      kept: struckReading({ midi, cents: 0 }),
      others: [struckReading({ midi, cents: 1 })],
    }));
    expect(recordedStrings([...others, { kept: once, others: [] }]).strings[4]?.reading).toEqual(once);
  });
});
