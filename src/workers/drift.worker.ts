/** Judges an instrument's years, or tries out invented ones, for the page. */
import { doDriftWork } from './doDriftWork.ts';
import type { DriftReport } from './driftMessages.ts';
import { parseDriftWork } from './parseDrift.ts';
import type { WorkerScope } from './workerScope.ts';

const scope = globalThis as unknown as WorkerScope<DriftReport>;

scope.onmessage = (event) => doDriftWork(parseDriftWork(event.data), (report) => scope.postMessage(report));
