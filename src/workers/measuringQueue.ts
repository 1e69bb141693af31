/** What the measuring worker does next: takes in the order played; a take that still sounds only when no other waits. */
import type { EarlyToMeasure, MeasuringRequest } from './listeningMessages.ts';

export type MeasuringQueue = {
  readonly add: (request: MeasuringRequest) => void;
  readonly next: () => MeasuringRequest | undefined;
};

/** Of takes that still sound the newest request alone waits, and none once a take comes that was cut after it: it is the same one. */
export function createMeasuringQueue(): MeasuringQueue {
  const waiting: MeasuringRequest[] = [];
  let early: EarlyToMeasure | undefined;
  return {
    add: (request) => {
      early = request.kind === 'early' ? request : undefined;
      if (request.kind !== 'early') waiting.push(request);
    },
    next: () => {
      const next = waiting.shift() ?? early;
      if (next === early) early = undefined;
      return next;
    },
  };
}
