/** The page's side of the worker that packs archives: the bytes go there while the page makes the next ones. */
import { type ByteWork, usualByteWork } from '../files/archive/byteWork.ts';
import type { OnPacked, PackedFacts, Packer } from '../files/archive/packer.ts';
import { type PackingReport, type PackingRequest, parsePackingReport } from './packingMessages.ts';

export type Packing = { readonly byteWork: ByteWork; readonly close: () => void };

type FarEnd = Pick<Worker, 'postMessage' | 'terminate'> & {
  onmessage: ((event: MessageEvent<unknown>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
};

/** Pushes on their way to the worker, of a tenth of a megabyte each: enough that it never waits, and no more memory than that. */
const MOST_UNDERWAY = 8;

export function openPacking(
  worker: FarEnd = new Worker(new URL('./packing.worker.ts', import.meta.url), { type: 'module' }),
): Packing {
  const desk = createDesk(worker);
  worker.onmessage = (event) => desk.hear(parsePackingReport(event.data));
  worker.onerror = (event) => desk.fail(new Error(event.message || 'a worker of this page could not be loaded'));
  return { byteWork: { ...usualByteWork(), createPacker: desk.createPacker }, close: () => worker.terminate() };
}

type OpenFile = { readonly onPacked: OnPacked; finished(facts: PackedFacts): void };

function createDesk(worker: FarEnd) {
  const files = new Map<number, OpenFile>();
  let fileCount = 0;
  let underwayCount = 0;
  let goOn: () => void = () => undefined;
  let fail: (fault: Error) => void = () => undefined;
  const failed = new Promise<never>((_, reject) => {
    fail = reject;
  });
  failed.catch(() => undefined); // told to whoever waits
  const ask = (request: PackingRequest, transfer: Transferable[] = []) => worker.postMessage(request, transfer);
  const push = async (file: number, bytes: Uint8Array<ArrayBuffer>) => {
    underwayCount += 1;
    ask({ kind: 'push', file, bytes }, [bytes.buffer]);
    while (underwayCount >= MOST_UNDERWAY)
      await Promise.race([failed, new Promise<void>((resolve) => (goOn = resolve))]);
  };
  const createPacker = (onPacked: OnPacked): Packer => {
    const file = fileCount++;
    const finished = new Promise<PackedFacts>((resolve) => files.set(file, { onPacked, finished: resolve }));
    return {
      push: (bytes) => push(file, bytes),
      finish() {
        ask({ kind: 'finish', file });
        return Promise.race([failed, finished]);
      },
    };
  };
  return { createPacker, fail, hear };
  function hear(report: PackingReport): void {
    switch (report.kind) {
      case 'failed':
        fail(new Error(report.detail));
        break;
      case 'taken':
        underwayCount -= 1;
        goOn();
        break;
      case 'packed':
        files.get(report.file)?.onPacked(report.bytes);
        break;
      case 'finished':
        files.get(report.file)?.finished(report.facts);
        files.delete(report.file);
    }
  }
}
