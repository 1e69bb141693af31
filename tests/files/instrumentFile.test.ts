import { describe, expect, it } from 'vitest';
import { readInstrumentFile } from '../../src/files/instrumentFile.ts';

describe('readInstrumentFile', () => {
  it('reads compass, bass bridge and struts', () => {
    const text = '{"compass": "A0-A7", "bassBridgeTop": "E2", "strutsAfter": ["E2", "B4"], "maker": "unknown to us"}';
    expect(readInstrumentFile(text)).toEqual({
      ok: true,
      instrument: { compass: { lowestMidi: 21, highestMidi: 105 }, bassBridgeTopMidi: 40, strutsAfterMidi: [40, 71] },
    });
  });

  it('takes what is not given for not known', () => {
    expect(readInstrumentFile('{}')).toEqual({
      ok: true,
      instrument: { compass: null, bassBridgeTopMidi: null, strutsAfterMidi: [] },
    });
  });

  it.each([
    ['what is not JSON', 'compass: A0-C8', /is not JSON/],
    ['a compass', '{"compass": "all"}', /compass.*A0-C8/],
    ['a note', '{"bassBridgeTop": "H2"}', /bassBridgeTop.*note name/],
    ['a list', '{"strutsAfter": "E2"}', /strutsAfter/],
    ['a list that is no object', '[1]', /.+/],
  ])('complains of %s', (_, text, says) => {
    const outcome = readInstrumentFile(text);
    expect(outcome.ok ? undefined : outcome.message).toMatch(says);
  });
});
