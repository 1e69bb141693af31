/** What the packing worker can be asked, and what it answers. Files of an archive are told apart by a number. */
import * as v from 'valibot';
import type { PackedFacts } from '../files/archive/packer.ts';
import { checkedMessage } from './checkedMessage.ts';

export type PackingRequest =
  | { readonly kind: 'push'; readonly file: number; readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly kind: 'finish'; readonly file: number };

export type PackingReport =
  | { readonly kind: 'packed'; readonly file: number; readonly bytes: Uint8Array }
  /** A push has been worked on. */
  | { readonly kind: 'taken'; readonly file: number }
  | { readonly kind: 'finished'; readonly file: number; readonly facts: PackedFacts }
  | { readonly kind: 'failed'; readonly detail: string };

const file = v.pipe(v.number(), v.integer(), v.minValue(0));
const bytes = v.custom<Uint8Array<ArrayBuffer>>((value) => value instanceof Uint8Array, 'not bytes');

const request = v.variant('kind', [
  v.object({ kind: v.literal('push'), file, bytes }),
  v.object({ kind: v.literal('finish'), file }),
]);

const report = v.variant('kind', [
  v.object({ kind: v.literal('packed'), file, bytes }),
  v.object({ kind: v.literal('taken'), file }),
  v.object({
    kind: v.literal('finished'),
    file,
    facts: v.object({ byteCount: v.number(), crc: v.number(), sha256: v.string() }),
  }),
  v.object({ kind: v.literal('failed'), detail: v.string() }),
]);

/** @throws {TypeError} naming the part of the message that does not fit */
export const parsePackingRequest = (data: unknown): PackingRequest => checkedMessage(request, data);
/** @throws {TypeError} naming the part of the message that does not fit */
export const parsePackingReport = (data: unknown): PackingReport => checkedMessage(report, data);
