import { describe, expect, it } from 'vitest';
import type { InstrumentId } from '../../src/piano/ids.ts';
import { simulateHistory } from '../../src/stability/simulateHistory.ts';
import { regularVisits, usualPlan } from '../../src/stability/simulation/historyPlan.ts';
import { surveyCurves } from '../../src/survey/surveyCurves.ts';
import { doDriftWork } from '../../src/workers/doDriftWork.ts';
import type { DriftReport, HistoryToJudge, SurveyToCurve } from '../../src/workers/driftMessages.ts';
import { judgedDrift, knownDrift, stateOf } from '../../src/workers/judgedDrift.ts';
import { openDrift } from '../../src/workers/openDrift.ts';
import { parseDriftReport, parseDriftWork } from '../../src/workers/parseDrift.ts';
import { seededRandom } from '../support/seededRandom.ts';

const { readings, events } = simulateHistory(usualPlan({ visits: regularVisits('2020-03-01', 3, 6) }), seededRandom(1));
const HISTORY: HistoryToJudge = {
  readings,
  events,
  instrument: { compass: null, bassBridgeTopMidi: 43, strutsAfterMidi: [43] },
  thresholdCentsPerYear: 1,
};

function curveReadingAt(midi: number): SurveyToCurve['readings'][number] {
  const inharmonicityB = 1e-4 * Math.exp(0.08 * (midi - 40));
  return {
    midi,
    stringPosition: 0,
    inharmonicityB,
    inharmonicityBStandardUncertainty: 0.02 * inharmonicityB,
    lifeTimeS: 20 - 0.15 * midi,
    quality: { isUsable: true },
  };
}

/** A worker that answers at once, in place of one on another thread. */
function nearWorker() {
  const far = {
    onmessage: null as ((event: MessageEvent<unknown>) => void) | null,
    onerror: null as ((event: ErrorEvent) => void) | null,
    isEnded: false,
    terminate: () => {
      far.isEnded = true;
    },
    postMessage: (work: unknown) => {
      const reports: DriftReport[] = [];
      doDriftWork(parseDriftWork(structuredClone(work)), (report) => reports.push(report));
      queueMicrotask(() => {
        for (const report of reports) far.onmessage?.({ data: structuredClone(report) } as MessageEvent<unknown>);
      });
    },
  };
  return far;
}

describe('the drift worker’s messages', () => {
  it('carry a history there and its judgement back', async () => {
    const worker = nearWorker();
    const found: DriftReport[] = [];
    const { ended } = openDrift({ kind: 'judge', history: HISTORY }, (report) => found.push(report), worker);
    expect(await ended).toBe('finished');
    expect(found.map((report) => report.kind)).toEqual(['judged']);
    expect(worker.isEnded).toBe(true);
  });

  it('carry a survey there and its curves back, to be worked out as on the page', async () => {
    const survey: SurveyToCurve = {
      readings: Array.from({ length: 60 }, (_, index) => curveReadingAt(30 + index)),
      compass: { lowestMidi: 21, highestMidi: 108 },
      bassBridgeTopMidi: 43,
    };
    const found: DriftReport[] = [];
    await openDrift({ kind: 'curves', survey }, (report) => found.push(report), nearWorker()).ended;
    expect(found).toEqual([
      { kind: 'curves', curves: surveyCurves(survey.readings, survey.compass, survey.bassBridgeTopMidi) },
    ]);
  });

  it('are refused where they do not fit, and name the place', () => {
    const history = { ...HISTORY, readings: [{ ...readings[0], cents: Number.NaN }] };
    expect(() => parseDriftWork({ kind: 'judge', history })).toThrow(/history\.readings\.0\.cents/);
    expect(() => parseDriftReport({ kind: 'judged', drift: {} })).toThrow(/drift/);
  });

  it('say so where the work fails', async () => {
    const worker = nearWorker();
    worker.postMessage = () =>
      queueMicrotask(() => worker.onmessage?.({ data: { kind: 'failed', detail: 'no' } } as MessageEvent<unknown>));
    const { ended } = openDrift({ kind: 'judge', history: HISTORY }, () => undefined, worker);
    await expect(ended).rejects.toThrow('no');
    expect(worker.isEnded).toBe(true);
  });

  it('end with a cancel, and nothing is reported after it', async () => {
    const worker = nearWorker();
    const found: DriftReport[] = [];
    const running = openDrift({ kind: 'judge', history: HISTORY }, (report) => found.push(report), worker);
    running.cancel();
    expect(await running.ended).toBe('cancelled');
    expect([found, worker.isEnded]).toEqual([[], true]);
  });
});

describe('a judgement', () => {
  const id = 'one' as InstrumentId;

  it('is made once for each state of the records', async () => {
    let openedCount = 0;
    const open: typeof openDrift = (work, onReport) => {
      openedCount += 1;
      return openDrift(work, onReport, nearWorker());
    };
    expect(knownDrift(id, HISTORY)).toBeUndefined();
    const first = await judgedDrift(id, HISTORY, open).drift;
    expect(await judgedDrift(id, HISTORY, open).drift).toBe(first);
    expect(knownDrift(id, HISTORY)).toBe(first);
    expect(openedCount).toBe(1);
    await judgedDrift(id, { ...HISTORY, thresholdCentsPerYear: 2 }, open).drift;
    expect(openedCount).toBe(2);
  });

  it('knows another state by any figure', () => {
    const [first, ...rest] = readings;
    const moved = { ...HISTORY, readings: [{ ...first!, cents: first!.cents + 1e-9 }, ...rest] };
    expect(stateOf(moved)).not.toBe(stateOf(HISTORY));
    expect(stateOf(structuredClone(HISTORY))).toBe(stateOf(HISTORY));
  });
});
