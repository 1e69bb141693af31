import { describe, expect, it } from 'vitest';
import type { InstrumentId } from '../../../src/piano/ids.ts';
import type { Instrument } from '../../../src/piano/instrument.ts';
import {
  type DraftFaults,
  EMPTY_DRAFT,
  type InstrumentDraft,
  instrumentToDraft,
  readDraft,
  withDraft,
} from '../../../src/screens/instrumentForm/instrumentDraft.ts';

const NAMED: InstrumentDraft = { ...EMPTY_DRAFT, name: 'Hall grand' };

const INSTRUMENT: Instrument = {
  id: 'i1' as InstrumentId,
  name: 'Hall grand',
  kind: 'square',
  builtYear: 1871,
  serialNumber: '12 a',
  compass: { lowestMidi: 24, highestMidi: 105 },
  bassBridgeTopMidi: 42,
  strutsAfterMidi: [42, 71],
  pinBlock: 'beech',
  pinBlockKind: 'solid planks',
  tuningPinDiameterMm: 7.16,
  remark: '',
  isDemonstration: false,
};

describe('the form of an instrument', () => {
  it('takes a name alone, for everything else may be unknown', () => {
    const read = readDraft(NAMED);
    expect(read.isSound && read.instrument).toMatchObject({
      name: 'Hall grand',
      builtYear: null,
      bassBridgeTopMidi: null,
      strutsAfterMidi: [],
      compass: { lowestMidi: 21, highestMidi: 108 },
    });
  });

  it('gives back what was stored when nothing is changed', () => {
    const { id: _id, isDemonstration: _isDemonstration, ...fields } = INSTRUMENT;
    expect(readDraft(instrumentToDraft(INSTRUMENT))).toEqual({ isSound: true, instrument: fields });
  });

  it('leaves out a kind of block and a diameter that nobody said, also where they were stored before', () => {
    const read = readDraft({ ...instrumentToDraft(INSTRUMENT), pinBlockKind: 'not said', pinDiameter: ' ' });
    if (!read.isSound) throw new Error('the draft should be sound');
    const edited = withDraft({ ...INSTRUMENT, slipThresholdCentsPerYear: 0.5 }, read.instrument);
    expect(edited).not.toHaveProperty('pinBlockKind');
    expect(edited).not.toHaveProperty('tuningPinDiameterMm');
    expect(edited.slipThresholdCentsPerYear).toBe(0.5);
    expect(edited.id).toBe(INSTRUMENT.id);
  });

  it('keeps an owner and a place, and takes them away where their fields are emptied', () => {
    const draft = { ...NAMED, ownerName: ' The school ', ownerAddress: 'The hall' };
    const read = readDraft(draft);
    expect(read.isSound && read.instrument).toMatchObject({ ownerName: 'The school', ownerAddress: 'The hall' });
    const emptied = readDraft({ ...draft, ownerName: '', ownerAddress: ' ' });
    if (!read.isSound || !emptied.isSound) throw new Error('the drafts should be sound');
    const edited = withDraft({ ...INSTRUMENT, ...read.instrument }, emptied.instrument);
    expect(edited).not.toHaveProperty('ownerName');
    expect(edited).not.toHaveProperty('ownerAddress');
  });

  it('reads a diameter with a decimal comma', () => {
    const read = readDraft({ ...NAMED, pinDiameter: '7,27' });
    expect(read.isSound && read.instrument.tuningPinDiameterMm).toBe(7.27);
  });

  it('sorts struts, drops doubles and understands any separator', () => {
    const read = readDraft({ ...NAMED, struts: 'c6; E2  B4,E2' });
    expect(read.isSound && read.instrument.strutsAfterMidi).toEqual([40, 71, 84]);
  });

  it.each<[string, Partial<InstrumentDraft>, DraftFaults]>([
    ['a blank name', { name: '  ' }, { name: 'name-missing' }],
    ['a year in words', { builtYear: 'about 1900' }, { builtYear: 'year-not-a-year' }],
    ['a year before pianos', { builtYear: '1492' }, { builtYear: 'year-not-a-year' }],
    ['a lowest note that is none', { compassChoice: 'other', lowest: 'H2' }, { lowest: 'lowest-not-a-note' }],
    ['no highest note', { compassChoice: 'other', highest: '' }, { highest: 'highest-not-a-note' }],
    ['a reversed compass', { compassChoice: 'other', lowest: 'C5', highest: 'C2' }, { highest: 'compass-reversed' }],
    ['a bass bridge that ends nowhere', { bassTop: 'E' }, { bassTop: 'bass-top-not-a-note' }],
    ['a bass bridge above the compass', { compassChoice: '85', bassTop: 'C8' }, { bassTop: 'bass-top-outside' }],
    ['a strut that is no note', { struts: 'E2, 17' }, { struts: 'strut-not-a-note' }],
    ['a diameter in inches', { pinDiameter: '0.282' }, { pinDiameter: 'pin-diameter-not-a-number' }],
    ['a strut outside', { struts: 'E2, C9' }, { struts: 'strut-outside' }],
  ])('refuses %s and names the field', (_what, change, faults) => {
    expect(readDraft({ ...NAMED, ...change })).toEqual({ isSound: false, faults });
  });

  it('names every field at fault at once', () => {
    const read = readDraft({ ...EMPTY_DRAFT, builtYear: 'x', struts: 'x' });
    expect(read.isSound ? [] : Object.keys(read.faults).sort()).toEqual(['builtYear', 'name', 'struts']);
  });
});
