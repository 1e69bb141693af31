/** The page's side of the worker for archives' bytes: it packs and reckons while the page makes the next rows, or reads them. */
import { type ByteWork, usualByteWork } from '../files/archive/byteWork.ts';
import type { DigestFacts } from '../files/archive/fileDigest.ts';
import type { OnPacked } from '../files/archive/packer.ts';
import { type ByteReport, type ByteRequest, type ByteTask, parseByteReport } from './byteMessages.ts';

export type ByteDesk = { readonly byteWork: ByteWork; readonly close: () => void };

type FarEnd = Pick<Worker, 'postMessage' | 'terminate'> & {
  onmessage: ((event: MessageEvent<unknown>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
};

/** Pieces on their way to the worker, of a tenth of a megabyte each: enough that it never waits, and no more memory than that. */
const MOST_UNDERWAY = 8;

/** To be closed when the archive is written or read, or was given up. */
export function openByteWork(
  worker: FarEnd = new Worker(new URL('./bytes.worker.ts', import.meta.url), { type: 'module' }),
): ByteDesk {
  const line = createLine(worker);
  worker.onmessage = (event) => line.hear(parseByteReport(event.data));
  worker.onerror = (event) => line.fail(new Error(event.message || 'a worker of this page could not be loaded'));
  const byteWork: ByteWork = {
    ...usualByteWork(),
    createPacker: (onPacked) => line.begin('pack', onPacked),
    createDigest(withSha256) {
      const { push, finish } = line.begin(withSha256 ? 'crc and sha256' : 'crc');
      return { add: (bytes) => push(bytes.slice()), facts: finish };
    },
  };
  return { byteWork, close: () => worker.terminate() };
}

type OpenFile = { readonly onPacked: OnPacked; readonly finished: (facts: DigestFacts) => void };

function createLine(worker: FarEnd) {
  const files = new Map<number, OpenFile>();
  let [fileCount, underwayCount] = [0, 0];
  let goOn: () => void = () => undefined;
  let fail: (fault: Error) => void = () => undefined;
  const failed = new Promise<never>((_, reject) => {
    fail = reject;
  });
  failed.catch(() => undefined); // told to whoever waits
  const ask = (request: ByteRequest, transfer: Transferable[] = []) => worker.postMessage(request, transfer);
  const push = async (file: number, bytes: Uint8Array<ArrayBuffer>) => {
    underwayCount += 1;
    ask({ kind: 'push', file, bytes }, [bytes.buffer]);
    while (underwayCount >= MOST_UNDERWAY)
      await Promise.race([
        failed,
        new Promise<void>((resolve) => {
          goOn = resolve;
        }),
      ]);
  };
  const begin = (task: ByteTask, onPacked: OnPacked = () => undefined) => {
    const file = fileCount++;
    const finished = new Promise<DigestFacts>((resolve) => files.set(file, { onPacked, finished: resolve }));
    ask({ kind: 'begin', file, task });
    const finish = () => {
      ask({ kind: 'finish', file });
      return Promise.race([failed, finished]);
    };
    return { push: (bytes: Uint8Array<ArrayBuffer>) => push(file, bytes), finish };
  };
  return { begin, fail, hear };
  function hear(report: ByteReport): void {
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
