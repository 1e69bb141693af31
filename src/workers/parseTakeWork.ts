/** The gate for messages to and from take workers. Segments and results are looked at in outline: the same program made them. */
import * as v from 'valibot';
import { checkedMessage } from './checkedMessage.ts';
import type { SegmentToMeasure } from './listeningMessages.ts';
import { parseMeasuringRequest } from './parseMessage.ts';
import type { TakeAnswer, TakeRequest, TakeResult, TakeWork } from './takeWork.ts';

const finite = v.pipe(v.number(), v.finite());
const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const samples = v.custom<Float32Array<ArrayBuffer>>((value) => value instanceof Float32Array, 'not 32-bit samples');
const bytes = v.custom<Uint8Array<ArrayBuffer>>((value) => value instanceof Uint8Array, 'not bytes');

const segment = v.custom<SegmentToMeasure>(
  (value) => parseMeasuringRequest(value).kind === 'segment',
  'not a cut take',
);

const work = v.variant('kind', [
  v.object({ kind: v.literal('measure'), segment, expectedMidi: v.nullable(count) }),
  v.object({ kind: v.literal('encode'), samples, sampleRateHz: finite }),
  v.object({ kind: v.literal('decode'), bytes }),
  v.object({
    kind: v.literal('measure-again'),
    sound: v.object({ bytes, onsetIndex: count, startS: finite }),
    pitchStandardHz: finite,
    stringPosition: v.picklist([0, 1, 2, 3]),
    midi: count,
    hasHole: v.boolean(),
  }),
  v.object({
    kind: v.literal('spectrum'),
    samples,
    sampleRateHz: finite,
    request: v.object({ startIndex: count, durationS: finite, highestHz: finite, pointCount: count }),
  }),
]);

const takeRequest = v.variant('kind', [
  v.object({ kind: v.literal('serve'), port: v.instance(MessagePort) }),
  v.object({ kind: v.literal('work'), number: count, work }),
]);

const result = v.custom<TakeResult<TakeWork>>((value) => typeof value === 'object' && value !== null, 'not a result');

const takeAnswer = v.variant('kind', [
  v.object({ kind: v.literal('done'), number: count, result }),
  v.object({ kind: v.literal('failed'), number: count, detail: v.string() }),
]);

/** @throws {TypeError} naming the part of the message that does not fit */
export const parseTakeRequest = (data: unknown): TakeRequest => checkedMessage(takeRequest, data);
/** @throws {TypeError} naming the part of the message that does not fit */
export const parseTakeAnswer = (data: unknown): TakeAnswer => checkedMessage(takeAnswer, data);
