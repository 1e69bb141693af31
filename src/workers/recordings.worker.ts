/** Reads recordings block by block and cuts them into takes, which the take workers measure meanwhile. */
import { createTakeAsker } from './askTakeWorker.ts';
import { parseRecordingsRequest } from './parseRecordings.ts';
import { type Recording, readRecordings } from './readRecordings.ts';
import type { RecordingsReport, RecordingsRequest } from './recordingsMessages.ts';
import type { WorkerScope } from './workerScope.ts';

const scope = globalThis as unknown as WorkerScope<RecordingsReport>;

/** One is measured, one waits, one is being cut, for each worker. */
const TAKES_PER_WORKER = 3;

scope.onmessage = (event) => void read(parseRecordingsRequest(event.data));

async function read({ files, settings, takeWorkers }: RecordingsRequest): Promise<void> {
  const askers = takeWorkers.map((port) => createTakeAsker(port));
  let turn = 0;
  try {
    await readRecordings(files.map(recordingOf), {
      settings,
      measure: (segment, expectedMidi) => {
        const asker = askers[turn % askers.length];
        turn += 1;
        if (!asker) return Promise.reject(new Error('there is no worker to measure with'));
        return asker.ask({ kind: 'measure', segment, expectedMidi });
      },
      report,
      mostUnderWay: TAKES_PER_WORKER * askers.length,
      mostOpen: askers.length,
    });
    report({ kind: 'finished' });
  } catch (error) {
    report({ kind: 'failed', detail: error instanceof Error ? error.message : String(error) });
  }
}

function report(told: RecordingsReport): void {
  scope.postMessage(told, told.kind === 'take' ? [told.take.samples.buffer] : []);
}

function recordingOf(file: File): Recording {
  const read = async (offset: number, length: number) =>
    new Uint8Array(await file.slice(offset, offset + length).arrayBuffer());
  return { name: file.name, source: { byteCount: file.size, read } };
}
