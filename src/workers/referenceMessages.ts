/** Messages between the page and the worker that listens for a reference tone. */
import * as v from 'valibot';
import type { ReferenceOutcome } from '../analysis/tone/measureReference.ts';
import { checkedMessage } from './checkedMessage.ts';

export type ReferenceRequest =
  | { readonly kind: 'open'; readonly blocks: MessagePort; readonly sampleRateHz: number; readonly expectedHz: number }
  /** Sound was lost; what was heard until now is no stretch of its own. */
  | { readonly kind: 'hole' };

export type ReferenceReport =
  /** For how long the tone has been heard without a break, in whole seconds. */
  | { readonly kind: 'heard'; readonly heardS: number }
  | { readonly kind: 'outcome'; readonly outcome: ReferenceOutcome };

const finite = v.pipe(v.number(), v.finite());
const request = v.variant('kind', [
  v.object({
    kind: v.literal('open'),
    blocks: v.instance(MessagePort),
    sampleRateHz: v.pipe(finite, v.minValue(1)),
    expectedHz: finite,
  }),
  v.object({ kind: v.literal('hole') }),
]);
const report = v.variant('kind', [
  v.object({ kind: v.literal('heard'), heardS: finite }),
  v.object({
    kind: v.literal('outcome'),
    outcome: v.variant('measured', [
      v.object({ measured: v.literal(true), hz: finite, standardUncertaintyHz: finite, durationS: finite }),
      v.object({ measured: v.literal(false), reason: v.picklist(['too-short', 'not-heard', 'unsteady']) }),
    ]),
  }),
]);

/** @throws {TypeError} naming the part of the message that does not fit */
export const parseReferenceRequest = (data: unknown): ReferenceRequest => checkedMessage(request, data);
/** @throws {TypeError} naming the part of the message that does not fit */
export const parseReferenceReport = (data: unknown): ReferenceReport => checkedMessage(report, data);
