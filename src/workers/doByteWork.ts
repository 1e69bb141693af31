import { type ByteWork, usualByteWork } from '../files/archive/byteWork.ts';
import { type Packer, storingPacker } from '../files/archive/packer.ts';
import type { ByteReport, ByteRequest, ByteTask } from './byteMessages.ts';

/** Answers requests one after another. */
export function createByteDesk(
  tell: (report: ByteReport) => void,
  byteWork: ByteWork = usualByteWork(),
): (request: ByteRequest) => Promise<void> {
  const files = new Map<number, Packer>();
  let working: Promise<void> = Promise.resolve();
  const begun = (file: number, task: ByteTask): Packer =>
    task === 'pack'
      ? byteWork.createPacker((bytes) => tell({ kind: 'packed', file, bytes }))
      : storingPacker(byteWork.createDigest(task !== 'crc'), () => undefined);
  const answer = async (request: ByteRequest): Promise<void> => {
    const { kind, file } = request;
    if (kind === 'begin') return void files.set(file, begun(file, request.task));
    const packer = files.get(file);
    if (!packer) throw new RangeError(`file ${file} was not begun`);
    if (kind === 'push') {
      await packer.push(request.bytes);
      return tell({ kind: 'taken' });
    }
    files.delete(file);
    tell({ kind: 'finished', file, facts: await packer.finish() });
  };
  return (request) => {
    working = working
      .then(() => answer(request))
      .catch((fault: unknown) =>
        tell({ kind: 'failed', detail: fault instanceof Error ? fault.message : String(fault) }),
      );
    return working;
  };
}
