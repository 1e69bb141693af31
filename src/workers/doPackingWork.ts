import { type ByteWork, usualByteWork } from '../files/archive/byteWork.ts';
import type { Packer } from '../files/archive/packer.ts';
import type { PackingReport, PackingRequest } from './packingMessages.ts';

/** Answers requests one after another, each file with a packer of its own. */
export function createPackingDesk(
  tell: (report: PackingReport) => void,
  byteWork: ByteWork = usualByteWork(),
): (request: PackingRequest) => Promise<void> {
  const packers = new Map<number, Packer>();
  let working: Promise<void> = Promise.resolve();
  const packerOf = (file: number): Packer => {
    const found = packers.get(file);
    if (found) return found;
    const made = byteWork.createPacker((bytes) => tell({ kind: 'packed', file, bytes }));
    packers.set(file, made);
    return made;
  };
  const answer = async (request: PackingRequest): Promise<void> => {
    const { file } = request;
    if (request.kind === 'push') {
      await packerOf(file).push(request.bytes);
      return tell({ kind: 'taken', file });
    }
    const facts = await packerOf(file).finish();
    packers.delete(file);
    tell({ kind: 'finished', file, facts });
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
