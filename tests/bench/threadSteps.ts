/** Steps of a page's own thread, from Chromium's trace of them. */

export type ThreadStep = {
  /** Since tracing began. */
  readonly atS: number;
  readonly wallMs: number;
  /** Null where the system does not tell. */
  readonly processorMs: number | null;
};

export const STEP_CATEGORIES = ['toplevel'];

type TraceEvent = {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Microseconds, these three. */
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
};

/** All steps of the busiest page, in order. */
export function threadSteps(trace: Buffer): ThreadStep[] {
  const { traceEvents } = JSON.parse(trace.toString()) as { readonly traceEvents: readonly TraceEvent[] };
  const isPageThread = (event: TraceEvent) => event.name === 'thread_name' && event.args?.name === 'CrRendererMain';
  const threads = traceEvents.filter(isPageThread).map(({ pid, tid }) => ({ pid, tid }));
  const steps = traceEvents.filter(({ name, ph }) => name === 'ThreadControllerImpl::RunTask' && ph === 'X');
  const beganAt = steps.reduce((least, { ts }) => Math.min(least, ts), Infinity);
  const ofThreads = threads.map(({ pid, tid }) => steps.filter((step) => step.pid === pid && step.tid === tid));
  const busiest = ofThreads.sort((a, b) => b.length - a.length)[0] ?? [];
  return busiest.map(({ ts, dur = 0, tdur }) => ({
    atS: (ts - beganAt) / 1e6,
    wallMs: dur / 1000,
    processorMs: tdur === undefined ? null : tdur / 1000,
  }));
}
