/** Compresses the files of an archive and works their checksums out, beside the page. */
import { createPackingDesk } from './doPackingWork.ts';
import { type PackingReport, parsePackingRequest } from './packingMessages.ts';
import type { WorkerScope } from './workerScope.ts';

const scope = globalThis as unknown as WorkerScope<PackingReport>;

const ask = createPackingDesk((report) => scope.postMessage(report));
scope.onmessage = (event) => void ask(parsePackingRequest(event.data));
