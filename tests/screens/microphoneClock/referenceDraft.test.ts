import { expect, it } from 'vitest';
import { newReferenceDraft, ofKind, readReference } from '../../../src/screens/microphoneClock/referenceDraft.ts';

it('reads a tone without a temperature', () => {
  expect(readReference({ ...newReferenceDraft('tone'), frequency: '1000,5', temperature: 'warm' })).toEqual({
    isSound: true,
    reference: {
      kind: 'tone',
      statedHz: 1000.5,
      statedStandardUncertaintyHz: 0.001,
      statedAtC: null,
      temperatureC: null,
    },
  });
});

it('reads a fork with both temperatures', () => {
  const draft = { ...ofKind(newReferenceDraft('tone'), 'fork'), temperature: '23.5' };
  const read = readReference(draft);
  expect(read).toMatchObject({ isSound: true, reference: { kind: 'fork', statedAtC: 20, temperatureC: 23.5 } });
});

it('asks for a fork’s warmth, and names every field that makes no sense', () => {
  expect(readReference(newReferenceDraft('fork'))).toEqual({
    isSound: false,
    faults: { temperature: 'temperature-out-of-range' },
  });
  expect(readReference({ ...newReferenceDraft('tone'), frequency: '20', uncertainty: '' })).toEqual({
    isSound: false,
    faults: { frequency: 'frequency-out-of-range', uncertainty: 'uncertainty-out-of-range' },
  });
});

it('forgets how well the other kind of reference was known', () => {
  const fork = ofKind(newReferenceDraft('tone'), 'fork');
  expect(fork.uncertainty).toBe(newReferenceDraft('fork').uncertainty);
});
