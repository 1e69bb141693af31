/** The gate for every message that enters a worker or comes back from one: what does not fit is a fault of the program. */
import * as v from 'valibot';
import type { TakeOutcome } from '../piano/reading.ts';
import type { BlockMessage } from '../piano/soundBlock.ts';
import type { ListeningReport, ListeningRequest, MeasuringRequest, MeasuringSetUp } from './listeningMessages.ts';

const finite = v.pipe(v.number(), v.finite());
const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const samples = v.custom<Float32Array<ArrayBuffer>>((value) => value instanceof Float32Array, 'not 32-bit samples');
const port = v.instance(MessagePort);

const settings = v.object({
  pitchStandardHz: v.pipe(finite, v.minValue(1)),
  stringPosition: v.picklist([0, 1, 2, 3]),
  midi: v.exactOptional(v.pipe(v.number(), v.integer())),
  expectedMidi: v.exactOptional(v.pipe(v.number(), v.integer())),
});

const blockMessage = v.variant('kind', [
  v.object({ kind: v.literal('block'), firstFrame: count, samples }),
  v.object({ kind: v.literal('flushed') }),
]);

const bare = <Kind extends string>(kind: Kind) => v.object({ kind: v.literal(kind) });

const listeningRequest = v.variant('kind', [
  v.object({
    kind: v.literal('open'),
    blocks: port,
    measuring: port,
    sampleRateHz: v.pipe(finite, v.minValue(1)),
    settings,
  }),
  v.object({ kind: v.literal('settings'), settings }),
  bare('hole'),
  bare('pause'),
  bare('resume'),
  bare('finish'),
]);

const sound = { samples, sampleRateHz: v.pipe(finite, v.minValue(1)), startS: finite, settings };

const take = {
  ...sound,
  endedBy: v.picklist(['decay', 'next-strike', 'longest', 'end-of-recording']),
  hasHole: v.boolean(),
};

const measuringRequest = v.variant('kind', [
  v.object({ kind: v.literal('segment'), ...take, onsetIndex: count, settingsNumber: count }),
  v.object({ kind: v.literal('early'), ...sound, onsetIndex: count, settingsNumber: count }),
  bare('end'),
]);

const measuringSetUp = v.object({ kind: v.literal('segments-from'), segments: port });

/** Looked at in outline only: its inside was made by the same program and is checked again where it is stored. */
const outcome = v.custom<TakeOutcome>(
  (value) =>
    v.is(
      v.variant('found', [
        v.object({ found: v.literal(true), reading: v.object({ midi: finite }) }),
        v.object({ found: v.literal(false), reason: v.string() }),
      ]),
      value,
    ),
  'not the outcome of a take',
);

const listeningReport = v.variant('kind', [
  v.object({ kind: v.literal('level'), peakDbfs: v.number(), rmsDbfs: v.number(), isClipped: v.boolean() }),
  v.object({
    kind: v.literal('hole'),
    cause: v.picklist(['frames-missing', 'zeros-inside-sound', 'interrupted']),
    atS: finite,
    durationS: v.nullable(finite),
  }),
  v.object({ kind: v.literal('clock'), audioFrameCount: count, systemTimeMs: finite, runNumber: count }),
  v.object({ kind: v.literal('take'), ...take, outcome, onsetS: finite, durationS: finite }),
  v.object({
    kind: v.literal('early'),
    onsetS: finite,
    toneS: finite,
    midi: v.pipe(v.number(), v.integer()),
    offsetCents: finite,
    offsetStandardUncertaintyCents: finite,
  }),
  v.object({
    kind: v.literal('room'),
    noiseDbfs: v.number(),
    trebleNoiseDbfs: v.number(),
    hum: v.nullable(v.object({ mainsHz: v.picklist([50, 60]), strongestHz: finite, levelDbfs: v.number() })),
  }),
  v.object({ kind: v.literal('strike'), atS: finite }),
  v.object({ kind: v.literal('room-level'), levelDbfs: v.number() }),
  bare('finished'),
  v.object({ kind: v.literal('failed'), detail: v.string() }),
]);

/** @throws {TypeError} naming the part of the message that does not fit */
export const parseBlockMessage = (data: unknown): BlockMessage => parse(blockMessage, data);
/** @throws {TypeError} naming the part of the message that does not fit */
export const parseListeningRequest = (data: unknown): ListeningRequest => parse(listeningRequest, data);
/** @throws {TypeError} naming the part of the message that does not fit */
export const parseMeasuringRequest = (data: unknown): MeasuringRequest => parse(measuringRequest, data);
/** @throws {TypeError} naming the part of the message that does not fit */
export const parseMeasuringSetUp = (data: unknown): MeasuringSetUp => parse(measuringSetUp, data);
/** @throws {TypeError} naming the part of the message that does not fit */
export const parseListeningReport = (data: unknown): ListeningReport => parse(listeningReport, data);

function parse<Schema extends v.GenericSchema>(schema: Schema, data: unknown): v.InferOutput<Schema> {
  const result = v.safeParse(schema, data);
  if (result.success) return result.output;
  const issue = result.issues[0];
  throw new TypeError(`message does not fit at ${v.getDotPath(issue) ?? 'its top'}: ${issue.message}`);
}
