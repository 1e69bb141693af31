/** A judgement by hand: two strings over two intervals. */
import type { Drift } from '../../../src/stability/drift/analyseDrift.ts';
import { NO_DETAIL } from '../../../src/stability/drift/driftDetail.ts';
import type { JudgedPin } from '../../../src/stability/drift/judgedPin.ts';

export function pin(midi: number, changes: Partial<JudgedPin['slip']> & { isFlagged?: boolean } = {}): JudgedPin {
  const { isFlagged = false, ...slip } = changes;
  return {
    midi,
    stringPosition: 2,
    isFlagged,
    slip: { centsPerYear: -0.1, standardUncertainty: 0.2, probability: 0.01, ...slip },
  };
}

export function exampleDrift(changes: Partial<Drift> = {}): Drift {
  const interval = (fromDate: string, toDate: string) => ({
    fromDate,
    toDate,
    years: 1,
    humidityChangePct: 5,
    hasBaseline: true,
    missingCount: 0,
    medianCents: 0,
  });
  return {
    intervals: [interval('2020-01-01', '2021-01-01'), interval('2021-01-01', '2022-01-01')],
    humidity: [],
    settling: null,
    pins: [pin(60), pin(61)],
    zones: [],
    outliers: [],
    verdict: { state: 'holding', grounds: [], reasons: [], slipRuledOutAboveCentsPerYear: 0.6 },
    detail: NO_DETAIL,
    ...changes,
  };
}
