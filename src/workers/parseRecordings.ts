/** The gate for messages to and from the recordings worker. */
import * as v from 'valibot';
import { checkedMessage } from './checkedMessage.ts';
import type { TakeMessage } from './listeningMessages.ts';
import { parseListeningReport } from './parseMessage.ts';
import type { RecordingsReport, RecordingsRequest } from './recordingsMessages.ts';

const recordingsRequest = v.object({
  kind: v.literal('read'),
  files: v.array(v.instance(File)),
  settings: v.object({
    pitchStandardHz: v.pipe(v.number(), v.finite(), v.minValue(1)),
    stringPosition: v.picklist([0, 1, 2, 3]),
  }),
  takeWorkers: v.pipe(v.array(v.instance(MessagePort)), v.minLength(1)),
});

const take = v.custom<TakeMessage>((value) => parseListeningReport(value).kind === 'take', 'not a take');
const fileName = v.string();

const recordingsReport = v.variant('kind', [
  v.object({ kind: v.literal('take'), fileName, take }),
  v.object({ kind: v.literal('progress'), share: v.pipe(v.number(), v.finite()) }),
  v.object({ kind: v.literal('unreadable'), fileName, message: v.string() }),
  v.object({
    kind: v.literal('read'),
    fileName,
    sampleRateHz: v.number(),
    noteCount: v.number(),
    warnings: v.array(v.string()),
  }),
  v.object({ kind: v.literal('finished') }),
  v.object({ kind: v.literal('failed'), detail: v.string() }),
]);

/** @throws {TypeError} naming the part of the message that does not fit */
export const parseRecordingsRequest = (data: unknown): RecordingsRequest => checkedMessage(recordingsRequest, data);
/** @throws {TypeError} naming the part of the message that does not fit */
export const parseRecordingsReport = (data: unknown): RecordingsReport => checkedMessage(recordingsReport, data);
