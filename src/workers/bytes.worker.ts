/** Compresses the files of an archive and works checksums out, beside the page. */
import { type ByteReport, parseByteRequest } from './byteMessages.ts';
import { createByteDesk } from './doByteWork.ts';
import type { WorkerScope } from './workerScope.ts';

const scope = globalThis as unknown as WorkerScope<ByteReport>;

const ask = createByteDesk((report) => scope.postMessage(report));
scope.onmessage = (event) => void ask(parseByteRequest(event.data));
