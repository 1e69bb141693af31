import { describe, expect, it } from 'vitest';
import type { EarlyToMeasure, MeasuringRequest, SegmentToMeasure } from '../../src/workers/listeningMessages.ts';
import { createMeasuringQueue } from '../../src/workers/measuringQueue.ts';

const sound = (startS: number) => ({
  samples: new Float32Array(1),
  sampleRateHz: 44100,
  startS,
  onsetIndex: 0,
  settings: { pitchStandardHz: 440, stringPosition: 0 as const },
  settingsNumber: 0,
});
const take = (startS: number): SegmentToMeasure => ({
  kind: 'segment',
  ...sound(startS),
  endedBy: 'decay',
  hasHole: false,
});
const early = (startS: number): EarlyToMeasure => ({ kind: 'early', ...sound(startS) });

function orderOf(...requests: readonly MeasuringRequest[]): MeasuringRequest[] {
  const queue = createMeasuringQueue();
  requests.forEach(queue.add);
  const order: MeasuringRequest[] = [];
  for (let next = queue.next(); next; next = queue.next()) order.push(next);
  return order;
}

describe('createMeasuringQueue', () => {
  it('gives takes in the order in which they came, then the end', () => {
    const requests = [take(1), take(2), { kind: 'end' }] as const;
    expect(orderOf(...requests)).toEqual(requests);
  });

  it('puts takes before one that still sounds', () => {
    const queue = createMeasuringQueue();
    queue.add(take(1));
    queue.add(early(2));
    expect(queue.next()).toEqual(take(1));
    expect(queue.next()).toEqual(early(2));
    expect(queue.next()).toBeUndefined();
  });

  it('keeps only the newest of those that still sound', () => {
    expect(orderOf(take(1), early(2), early(2.5), early(3))).toEqual([take(1), early(3)]);
  });

  it('drops a take that still sounded when the whole of it comes', () => {
    expect(orderOf(early(2), take(2))).toEqual([take(2)]);
  });

  it('drops it at the end', () => {
    expect(orderOf(early(2), { kind: 'end' })).toEqual([{ kind: 'end' }]);
  });
});
