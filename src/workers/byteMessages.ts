/** What the worker for archives' bytes can be asked, and what it answers. Files are told apart by a number. */
import * as v from 'valibot';
import type { DigestFacts } from '../files/archive/fileDigest.ts';
import { checkedMessage } from './checkedMessage.ts';

/** What is to be done with the bytes of a file: pack them, or work checksums out. */
export type ByteTask = 'pack' | 'crc' | 'crc and sha256';

export type ByteRequest =
  | { readonly kind: 'begin'; readonly file: number; readonly task: ByteTask }
  | { readonly kind: 'push'; readonly file: number; readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly kind: 'finish'; readonly file: number };

export type ByteReport =
  | { readonly kind: 'packed'; readonly file: number; readonly bytes: Uint8Array }
  /** A push has been worked on. */
  | { readonly kind: 'taken' }
  | { readonly kind: 'finished'; readonly file: number; readonly facts: DigestFacts }
  | { readonly kind: 'failed'; readonly detail: string };

const file = v.pipe(v.number(), v.integer(), v.minValue(0));
const bytes = v.custom<Uint8Array<ArrayBuffer>>((value) => value instanceof Uint8Array, 'not bytes');

const request = v.variant('kind', [
  v.object({ kind: v.literal('begin'), file, task: v.picklist(['pack', 'crc', 'crc and sha256']) }),
  v.object({ kind: v.literal('push'), file, bytes }),
  v.object({ kind: v.literal('finish'), file }),
]);

const report = v.variant('kind', [
  v.object({ kind: v.literal('packed'), file, bytes }),
  v.object({ kind: v.literal('taken') }),
  v.object({
    kind: v.literal('finished'),
    file,
    facts: v.object({ byteCount: v.number(), crc: v.number(), sha256: v.string() }),
  }),
  v.object({ kind: v.literal('failed'), detail: v.string() }),
]);

/** @throws {TypeError} naming the part of the message that does not fit */
export const parseByteRequest = (data: unknown): ByteRequest => checkedMessage(request, data);
/** @throws {TypeError} naming the part of the message that does not fit */
export const parseByteReport = (data: unknown): ByteReport => checkedMessage(report, data);
