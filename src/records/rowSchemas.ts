/**
 * What a sound row looks like. Rows are checked before they are written, so that nothing is stored that could not be read
 * back, and when they are read, because a row may come from an older version or a damaged disk.
 * A field that this version does not know is kept as it is, so that an older program loses nothing of a newer one's rows.
 * Numbers may be infinite (a noiseless test tone has no end of signal to noise) but never NaN.
 */
import * as v from 'valibot';
import type { ClockCalibration } from '../piano/clock.ts';
import type { Instrument, InstrumentEvent, Survey, Visit } from '../piano/instrument.ts';
import type { Photograph, PhotographFile } from '../piano/photograph.ts';
import type {
  BridgeTrial,
  OwnWireGrade,
  StringDecision,
  StringingSchedule,
  TorqueReading,
} from '../piano/stringingRecords.ts';
import { packingFault } from './packingFault.ts';
import type { SoundRow, TakeRow } from './rows.ts';
import { NotARecordError } from './writeOutcome.ts';

const id = v.pipe(v.string(), v.nonEmpty());
const midi = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(127));
const midiOrNull = v.nullable(midi);
const numberOrNull = v.nullable(v.number());
const isoDate = v.pipe(v.string(), v.isoDate());
/** Any text that starts with a calendar date, so that offsets and fractions of a second of every kind pass. */
const isoTime = v.pipe(v.string(), v.regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}/, 'an ISO 8601 date and time is needed'));
const stringPosition = v.picklist([0, 1, 2, 3]);

const compass = v.pipe(
  v.looseObject({ lowestMidi: midi, highestMidi: midi }),
  v.check((value) => value.lowestMidi <= value.highestMidi, 'the lowest note lies above the highest'),
);

const instrument = v.looseObject({
  id,
  name: v.string(),
  kind: v.picklist(['grand', 'upright', 'square', 'other']),
  builtYear: numberOrNull,
  serialNumber: v.string(),
  compass,
  bassBridgeTopMidi: midiOrNull,
  strutsAfterMidi: v.array(midi),
  pinBlock: v.string(),
  pinBlockKind: v.exactOptional(
    v.picklist(['original', 'repaired in place', 'solid planks', 'laminated', 'densified laminate', 'other']),
  ),
  tuningPinDiameterMm: v.exactOptional(v.pipe(v.number(), v.gtValue(0))),
  remark: v.string(),
  ownerName: v.exactOptional(v.string()),
  ownerAddress: v.exactOptional(v.string()),
  slipThresholdCentsPerYear: v.exactOptional(v.pipe(v.number(), v.gtValue(0))),
  isDemonstration: v.boolean(),
});

const event = v.looseObject({
  id,
  instrumentId: id,
  happenedOn: isoDate,
  kind: v.picklist(['restrung', 'string-replaced', 'pin-replaced', 'block-work', 'moved', 'tuned']),
  fromMidi: midiOrNull,
  toMidi: midiOrNull,
  remark: v.string(),
});

const visit = v.looseObject({
  id,
  instrumentId: id,
  visitedOn: isoDate,
  visitedBy: v.string(),
  humidityPct: numberOrNull,
  temperatureC: numberOrNull,
  pitchStandardHz: v.number(),
  remark: v.string(),
});

const surveyScope = v.variant('kind', [
  v.looseObject({ kind: v.literal('sample'), notesMidi: v.array(midi) }),
  v.looseObject({ kind: v.literal('section'), fromMidi: midi, toMidi: midi }),
  v.looseObject({ kind: v.literal('chosen'), notesMidi: v.array(midi) }),
]);

const clockOffset = { offsetPpm: v.number(), offsetStandardUncertaintyPpm: v.number() };
const calibration = v.looseObject({
  id,
  deviceLabel: v.string(),
  sampleRateHz: v.number(),
  measuredAt: isoTime,
  ...clockOffset,
  measuredHz: v.number(),
  measuredStandardUncertaintyHz: v.number(),
  reference: v.looseObject({
    kind: v.picklist(['fork', 'tone']),
    statedHz: v.number(),
    statedStandardUncertaintyHz: v.number(),
    statedAtC: numberOrNull,
    temperatureC: numberOrNull,
  }),
});

const survey = v.looseObject({
  id,
  visitId: id,
  instrumentId: id,
  stage: v.picklist(['as-found', 'as-left']),
  startedAt: isoTime,
  finishedAt: v.nullable(isoTime),
  deviceLabel: v.string(),
  sampleRateHz: numberOrNull,
  strings: v.picklist(['centre strings', 'open unisons', 'single strings']),
  scope: v.optional(surveyScope),
  clockAgainstSystem: v.optional(v.looseObject(clockOffset)),
  calibration: v.optional(calibration),
});

const beating = v.looseObject({
  kind: v.picklist(['none', 'false beat', 'unison', 'undetermined']),
  rateHz: numberOrNull,
  depthDb: numberOrNull,
  partialNumbers: v.array(v.number()),
  reason: v.string(),
});

const takeFault = v.picklist([
  'clipped',
  'too-quiet',
  'too-noisy',
  'too-short',
  'wrong-note',
  'two-notes',
  'speech',
  'knock',
  'hole-in-recording',
  'no-onset',
  'fit-failed',
]);

const quality = v.looseObject({
  snrDb: v.number(),
  isClipped: v.boolean(),
  isUsable: v.boolean(),
  faults: v.array(takeFault),
});

const reading = v.looseObject({
  midi,
  stringPosition,
  onsetS: v.number(),
  durationS: v.number(),
  pitchStandardHz: v.number(),
  partial1Hz: v.number(),
  partial1StandardUncertaintyHz: v.number(),
  partial1Source: v.picklist(['measured', 'fitted']),
  f0Hz: numberOrNull,
  f0StandardUncertaintyHz: numberOrNull,
  inharmonicityB: numberOrNull,
  inharmonicityBStandardUncertainty: numberOrNull,
  offsetCents: v.number(),
  offsetStandardUncertaintyCents: v.number(),
  beating,
  unisonStringsCents: v.nullable(v.array(v.number())),
  lifeTimeS: numberOrNull,
  quality,
});

const table = v.instance(Float64Array);
const packedPartials = v.pipe(
  v.looseObject({ partials: table, beats: table, components: table }),
  v.rawCheck(({ dataset, addIssue }) => {
    const fault = dataset.typed ? packingFault(dataset.value) : undefined;
    if (fault !== undefined) addIssue({ message: fault });
  }),
);

const measured = v.looseObject({ programVersion: v.string(), measuredAt: isoTime });

const earlierReading = v.looseObject({ reading, partials: packedPartials, measured: v.nullable(measured) });

const take = v.looseObject({
  id,
  surveyId: id,
  visitId: id,
  instrumentId: id,
  midi,
  stringPosition,
  recordedAt: isoTime,
  keptFlag: v.picklist([0, 1]),
  reading,
  partials: packedPartials,
  measured: v.exactOptional(measured),
  earlierReadings: v.exactOptional(v.array(earlierReading)),
});

const positive = v.pipe(v.number(), v.gtValue(0));
const count = v.pipe(v.number(), v.integer(), v.minValue(0));

const sound = v.pipe(
  v.looseObject({
    id,
    surveyId: id,
    instrumentId: id,
    sampleRateHz: positive,
    onsetIndex: count,
    startS: v.number(),
    durationS: positive,
    takeDurationS: positive,
    encoding: v.picklist(['flac']),
    bytes: v.instance(Uint8Array),
    byteCount: count,
  }),
  v.check((row) => row.byteCount === row.bytes.length, 'byteCount is not the number of bytes'),
);

const positionOrNull = v.nullable(stringPosition);
const onString = { id, instrumentId: id, midi, stringPosition };

const torque = v.looseObject({
  ...onString,
  visitId: id,
  torqueNm: positive,
  direction: v.picklist(['sharpwards', 'flatwards', 'not noted']),
  remark: v.string(),
});

const scheduleRow = v.looseObject({
  midi,
  stringCount: v.nullable(count),
  speakingLengthMm: v.nullable(positive),
  wireDiameterMm: v.nullable(positive),
  coreDiameterMm: v.nullable(positive),
  wrap: v.nullable(v.picklist(['copper', 'iron', 'brass'])),
  wireGrade: v.nullable(v.string()),
  bridge: v.nullable(v.picklist(['bass', 'long'])),
  interpolated: v.array(v.string()),
});

const schedule = v.looseObject({
  id,
  instrumentId: id,
  name: v.string(),
  kind: v.picklist(['as it is', 'planned']),
  pitchStandardHz: positive,
  rows: v.array(scheduleRow),
  remark: v.string(),
});

const wireGrade = v.looseObject({
  id,
  name: v.string(),
  source: v.string(),
  youngsModulusGpa: positive,
  densityKgPerM3: positive,
  rows: v.array(v.looseObject({ diameterMm: positive, tensileStrengthMpa: positive })),
});

const decision = v.looseObject({
  ...onString,
  choice: v.picklist(['leave', 'bridge work', 'replace wire', 'replace pin', 'look again']),
  reason: v.string(),
  decidedOn: isoDate,
  doneOn: v.nullable(isoDate),
});

const trial = v.looseObject({
  ...onString,
  visitId: id,
  surveyId: id,
  kind: v.picklist([
    'hold the bridge pin',
    'press the wire at the bridge',
    'tap the wire to the bridge',
    'seat the wire at the other end',
    'take out its twist',
    'other',
  ]),
  triedAt: isoTime,
  takesBefore: v.array(id),
  takesAfter: v.array(id),
  remark: v.string(),
});

const photograph = v.looseObject({
  id,
  instrumentId: id,
  visitId: v.nullable(id),
  midi: midiOrNull,
  stringPosition: positionOrNull,
  takenAt: v.nullable(isoTime),
  addedAt: isoTime,
  caption: v.string(),
  widthPx: positive,
  heightPx: positive,
  mediaType: v.picklist(['image/jpeg', 'image/png', 'image/webp']),
});

const photographFile = v.looseObject({ id, instrumentId: id, bytes: v.instance(Uint8Array) });

const SCHEMAS = {
  instruments: instrument,
  events: event,
  visits: visit,
  surveys: survey,
  takes: take,
  sounds: sound,
  calibrations: calibration,
  torques: torque,
  schedules: schedule,
  wireGrades: wireGrade,
  decisions: decision,
  trials: trial,
  photographs: photograph,
  photographFiles: photographFile,
};

export type RowOf = {
  instruments: Instrument;
  events: InstrumentEvent;
  visits: Visit;
  surveys: Survey;
  takes: TakeRow;
  sounds: SoundRow;
  calibrations: ClockCalibration;
  torques: TorqueReading;
  schedules: StringingSchedule;
  wireGrades: OwnWireGrade;
  decisions: StringDecision;
  trials: BridgeTrial;
  photographs: Photograph;
  photographFiles: PhotographFile;
};
export type TableName = keyof RowOf;

export type RowCheck<Name extends TableName> =
  | { readonly isSound: true; readonly row: RowOf[Name] }
  | { readonly isSound: false; readonly fault: string };

const stamped = v.looseObject({
  stamp: v.exactOptional(v.record(v.string(), v.pipe(v.number(), v.integer(), v.minValue(0)))),
  deletedAt: v.exactOptional(isoTime),
  deletionId: v.exactOptional(id),
});

/** Checks one row of a table; the fault names the field and what is wrong with it. */
export function checkRow<Name extends TableName>(tableName: Name, row: unknown): RowCheck<Name> {
  const result = v.safeParse(SCHEMAS[tableName], row);
  const stampResult = v.safeParse(stamped, row);
  if (result.success && stampResult.success) return { isSound: true, row: result.output as unknown as RowOf[Name] };
  const [issue] = result.issues ?? stampResult.issues ?? [];
  if (issue === undefined) throw new TypeError('a schema refused a row and gave no reason');
  const field = v.getDotPath(issue) ?? 'the row';
  return { isSound: false, fault: `${field}: ${issue.message}` };
}

/** The row, checked for writing. @throws {NotARecordError} naming the table, the id and the field */
export function soundRow<Name extends TableName>(tableName: Name, row: RowOf[Name]): RowOf[Name] {
  const check = checkRow(tableName, row);
  if (check.isSound) return check.row;
  throw new NotARecordError(`${tableName} ${String(row.id)} cannot be written. ${check.fault}`);
}
