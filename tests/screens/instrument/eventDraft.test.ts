import { describe, expect, it } from 'vitest';
import { COMPASS_85 } from '../../../src/piano/compass.ts';
import { type EventDraft, type EventFaults, readEvent } from '../../../src/screens/instrument/eventDraft.ts';

const DRAFT: EventDraft = { happenedOn: '2024-03-01', kind: 'string-replaced', from: 'C4', to: 'E4', remark: ' new ' };

describe('the form of work done', () => {
  it('reads the range of notes', () => {
    expect(readEvent(DRAFT, COMPASS_85)).toEqual({
      isSound: true,
      event: { happenedOn: '2024-03-01', kind: 'string-replaced', fromMidi: 60, toMidi: 64, remark: 'new' },
    });
  });

  it('means the whole instrument when no note is given', () => {
    const read = readEvent({ ...DRAFT, from: '', to: ' ' }, COMPASS_85);
    expect(read.isSound && [read.event.fromMidi, read.event.toMidi]).toEqual([null, null]);
  });

  it.each<[string, Partial<EventDraft>, EventFaults]>([
    ['no date', { happenedOn: '' }, { happenedOn: 'date-missing' }],
    ['a first note that is none', { from: 'H' }, { from: 'from-not-a-note' }],
    ['a last note that is none', { to: '99' }, { to: 'to-not-a-note' }],
    ['a note above the compass', { to: 'C8' }, { to: 'note-outside' }],
    ['a reversed range', { from: 'E4', to: 'C4' }, { to: 'range-reversed' }],
    ['a first note only', { to: '' }, { to: 'range-half' }],
    ['a last note only', { from: '' }, { from: 'range-half' }],
  ])('refuses %s and names the field', (_what, change, faults) => {
    expect(readEvent({ ...DRAFT, ...change }, COMPASS_85)).toEqual({ isSound: false, faults });
  });
});
