/** Small records to write and read back, and fast-check recipes for readings of every shape the types allow. */
import fc from 'fast-check';
import type { ClockCalibration } from '../../src/piano/clock.ts';
import type { CalibrationId } from '../../src/piano/ids.ts';
import type { Instrument, InstrumentEvent, Survey, Take, TakeSound, Visit } from '../../src/piano/instrument.ts';
import type { NoteReading, PartialReading } from '../../src/piano/reading.ts';
import { newId } from '../../src/records/newId.ts';

export function exampleInstrument(fields: Partial<Instrument> = {}): Instrument {
  return {
    id: newId(),
    name: 'The attic upright',
    kind: 'upright',
    builtYear: 1902,
    serialNumber: '',
    compass: { lowestMidi: 21, highestMidi: 105 },
    bassBridgeTopMidi: 52,
    strutsAfterMidi: [52, 71],
    pinBlock: 'maple, five laminations',
    remark: '',
    isDemonstration: false,
    ...fields,
  };
}

export function exampleEvent(instrument: Instrument, fields: Partial<InstrumentEvent> = {}): InstrumentEvent {
  return {
    id: newId(),
    instrumentId: instrument.id,
    happenedOn: '2020-03-01',
    kind: 'restrung',
    fromMidi: null,
    toMidi: null,
    remark: '',
    ...fields,
  };
}

export function exampleVisit(instrument: Instrument, fields: Partial<Visit> = {}): Visit {
  return {
    id: newId(),
    instrumentId: instrument.id,
    visitedOn: '2021-05-04',
    visitedBy: 'Ida',
    humidityPct: 45,
    temperatureC: null,
    pitchStandardHz: 440,
    remark: '',
    ...fields,
  };
}

export function exampleSurvey(visit: Visit, fields: Partial<Survey> = {}): Survey {
  return {
    id: newId(),
    visitId: visit.id,
    instrumentId: visit.instrumentId,
    stage: 'as-found',
    startedAt: `${visit.visitedOn}T09:00:00.000Z`,
    finishedAt: null,
    deviceLabel: 'a microphone',
    sampleRateHz: 48000,
    strings: 'centre strings',
    ...fields,
  };
}

export function exampleReading(fields: Partial<NoteReading> = {}): NoteReading {
  return {
    midi: 69,
    stringPosition: 2,
    onsetS: 0.25,
    durationS: 2.5,
    pitchStandardHz: 440,
    partial1Hz: 440.5,
    partial1StandardUncertaintyHz: 0.003,
    partial1Source: 'measured',
    f0Hz: 440.34,
    f0StandardUncertaintyHz: 0.004,
    inharmonicityB: 0.00072,
    inharmonicityBStandardUncertainty: 0.000004,
    offsetCents: 1.966,
    offsetStandardUncertaintyCents: 0.012,
    partials: [examplePartial(1, 440.5), examplePartial(2, 882.0)],
    beating: { kind: 'none', rateHz: null, depthDb: null, partialNumbers: [], reason: 'No partial beats.' },
    unisonStringsCents: null,
    lifeTimeS: 9,
    quality: { snrDb: 41, isClipped: false, isUsable: true, faults: [] },
    ...fields,
  };
}

export function examplePartial(partialNumber: number, frequencyHz: number): PartialReading {
  return {
    partialNumber,
    frequencyHz,
    frequencyStandardUncertaintyHz: 0.003,
    levelDbfs: -20,
    snrDb: 40,
    promptDecayTimeS: 3,
    afterDecayTimeS: null,
    beats: [],
    components: [{ frequencyHz, frequencyStandardUncertaintyHz: 0.003, levelDbfs: -20, decayTimeS: 3 }],
  };
}

export function exampleTake(survey: Survey, fields: Partial<Take> = {}): Take {
  const reading = fields.reading ?? exampleReading(fields.midi === undefined ? {} : { midi: fields.midi });
  return {
    id: newId(),
    surveyId: survey.id,
    visitId: survey.visitId,
    instrumentId: survey.instrumentId,
    midi: reading.midi,
    stringPosition: reading.stringPosition,
    recordedAt: '2021-05-04T09:01:00.000Z',
    isKept: true,
    reading,
    ...fields,
  };
}

export function exampleSound(take: Take, fields: Partial<TakeSound> = {}): TakeSound {
  return {
    id: take.id,
    surveyId: take.surveyId,
    instrumentId: take.instrumentId,
    sampleRateHz: 48000,
    onsetIndex: 14_400,
    startS: 12.5,
    durationS: 4.3,
    takeDurationS: 6,
    encoding: 'flac',
    bytes: Uint8Array.of(102, 76, 97, 67, 1, 2, 3),
    ...fields,
  };
}

/** Plain objects as our own code makes them. */
function record<Fields>(fields: { [Key in keyof Fields]: fc.Arbitrary<Fields[Key]> }): fc.Arbitrary<Fields> {
  return fc.record(fields, { noNullPrototype: true });
}

const figure = fc.double({ noNaN: true });
const figureOrNull = fc.option(figure, { nil: null });
const beat = record({ rateHz: figure, rateStandardUncertaintyHz: figure, depthDb: figure });
const component = record({
  frequencyHz: figure,
  frequencyStandardUncertaintyHz: figure,
  levelDbfs: figure,
  decayTimeS: figure,
});

export const anyPartial: fc.Arbitrary<PartialReading> = record({
  partialNumber: fc.integer({ min: 1, max: 60 }),
  frequencyHz: figure,
  frequencyStandardUncertaintyHz: figure,
  levelDbfs: figure,
  snrDb: figure,
  promptDecayTimeS: figureOrNull,
  afterDecayTimeS: figureOrNull,
  beats: fc.array(beat, { maxLength: 3 }),
  components: fc.array(component, { maxLength: 3 }),
});

export const anyReading: fc.Arbitrary<NoteReading> = record({
  midi: fc.integer({ min: 0, max: 127 }),
  stringPosition: fc.constantFrom(0, 1, 2, 3),
  onsetS: figure,
  durationS: figure,
  pitchStandardHz: figure,
  partial1Hz: figure,
  partial1StandardUncertaintyHz: figure,
  partial1Source: fc.constantFrom('measured', 'fitted'),
  f0Hz: figureOrNull,
  f0StandardUncertaintyHz: figureOrNull,
  inharmonicityB: figureOrNull,
  inharmonicityBStandardUncertainty: figureOrNull,
  offsetCents: figure,
  offsetStandardUncertaintyCents: figure,
  partials: fc.array(anyPartial, { maxLength: 40 }),
  beating: record({
    kind: fc.constantFrom('none', 'false beat', 'unison', 'undetermined'),
    rateHz: figureOrNull,
    depthDb: figureOrNull,
    partialNumbers: fc.array(fc.integer({ min: 1, max: 60 })),
    reason: fc.string(),
  }),
  unisonStringsCents: fc.option(fc.array(figure), { nil: null }),
  lifeTimeS: figureOrNull,
  quality: record({
    snrDb: figure,
    isClipped: fc.boolean(),
    isUsable: fc.boolean(),
    faults: fc.array(fc.constantFrom('clipped', 'too-quiet', 'speech', 'hole-in-recording', 'fit-failed')),
  }),
});

export const exampleCalibration: ClockCalibration = {
  id: newId<CalibrationId>(),
  deviceLabel: 'Microphone in the lid',
  sampleRateHz: 48000,
  measuredAt: '2024-05-03T10:00:00.000Z',
  offsetPpm: -41,
  offsetStandardUncertaintyPpm: 111,
  measuredHz: 439.9,
  measuredStandardUncertaintyHz: 0.0004,
  reference: { kind: 'fork', statedHz: 440, statedStandardUncertaintyHz: 0.02, statedAtC: 20, temperatureC: 22.5 },
};
