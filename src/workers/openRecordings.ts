/** The page's side of reading recordings: one worker reads and cuts, others measure. */
import { openTakeWorker } from './askTakeWorker.ts';
import type { ListeningSettings } from './listeningMessages.ts';
import { parseRecordingsReport } from './parseRecordings.ts';
import type { RecordingsReport, RecordingsRequest } from './recordingsMessages.ts';

/** More would not be faster on what people carry to a piano, and each holds takes in memory. */
const MOST_MEASURING = 4;

export type RecordingsDesk = {
  /** Breaks the reading off at once. What was told until then stands. */
  readonly cancel: () => void;
};

/** @param onReport is told everything; the workers end by themselves after `finished` or `failed` */
export function openRecordings(
  files: readonly File[],
  settings: ListeningSettings,
  onReport: (report: RecordingsReport) => void,
): RecordingsDesk {
  const reading = new Worker(new URL('./recordings.worker.ts', import.meta.url), { type: 'module' });
  const fail = (detail: string) => tell({ kind: 'failed', detail });
  const measuring = Array.from({ length: measuringCount() }, () => openTakeWorker(fail));
  let isOver = false;
  const end = () => {
    isOver = true;
    reading.terminate();
    for (const worker of measuring) worker.close();
  };
  const tell = (report: RecordingsReport) => {
    if (isOver) return;
    if (report.kind === 'finished' || report.kind === 'failed') end();
    onReport(report);
  };
  reading.onmessage = (event) => tell(parseRecordingsReport(event.data));
  reading.onerror = (event) => fail(event.message || 'a worker of this page could not be loaded');
  const takeWorkers = measuring.map((worker) => {
    const { port1, port2 } = new MessageChannel();
    worker.serve(port1);
    return port2;
  });
  const { pitchStandardHz, stringPosition } = settings;
  const request: RecordingsRequest = {
    kind: 'read',
    files,
    settings: { pitchStandardHz, stringPosition },
    takeWorkers,
  };
  reading.postMessage(request, takeWorkers);
  return { cancel: end };
}

/** All cores but none for the reading, which takes a small part of what the measuring takes. At least two, as on a tablet. */
function measuringCount(): number {
  return Math.max(2, Math.min(MOST_MEASURING, navigator.hardwareConcurrency ?? 2));
}
