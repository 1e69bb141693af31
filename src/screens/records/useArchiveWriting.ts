import { useRef, useState } from 'react';
import { ArchiveFault } from '../../files/archive/archiveFault.ts';
import { type WrittenArchive, writeArchive } from '../../files/archive/writeArchive.ts';
import type { Records } from '../../records/records.ts';
import { PROGRAM_VERSION } from '../../ui/programVersion.ts';
import { openByteWork } from '../../workers/openByteWork.ts';
import type { ArchiveSink } from './archiveSink.ts';
import { blobSpool } from './blobSpool.ts';
import type { ExportChoice } from './exportChoice.ts';
import { seldom } from './seldom.ts';

export type WritingState =
  | { readonly phase: 'none' }
  | { readonly phase: 'writing'; readonly table: string; readonly rowCount: number; readonly byteCount: number }
  | { readonly phase: 'done'; readonly name: string; readonly written: WrittenArchive }
  | { readonly phase: 'stopped' }
  | { readonly phase: 'failed'; readonly message: string };

export type ArchiveWriting = {
  readonly state: WritingState;
  /** True where the archive was written whole. */
  readonly write: (name: string, choice: ExportChoice, openSink: () => Promise<ArchiveSink | null>) => Promise<boolean>;
  readonly stop: () => void;
};

/** Writes an archive of the records into a sink, shows how far it is, and can be stopped; what was begun is then taken away. */
export function useArchiveWriting(records: Records): ArchiveWriting {
  const [state, setState] = useState<WritingState>({ phase: 'none' });
  const stopping = useRef(new AbortController());
  const write: ArchiveWriting['write'] = async (name, choice, openSink) => {
    stopping.current = new AbortController();
    let sink: ArchiveSink | null = null;
    try {
      sink = await openSink();
      if (!sink) return false;
      const written = await writeInto(sink, records, choice, { signal: stopping.current.signal, onProgress: setState });
      await sink.finish();
      setState({ phase: 'done', name, written });
      return true;
    } catch (fault) {
      await sink?.discard().catch((further: unknown) => console.info('A half-written file may be left:', further));
      setState(endOf(fault));
      return false;
    }
  };
  return { state, write, stop: () => stopping.current.abort() };
}

type WriteInto = { readonly signal: AbortSignal; readonly onProgress: (state: WritingState) => void };

async function writeInto(
  sink: ArchiveSink,
  records: Records,
  choice: ExportChoice,
  { signal, onProgress }: WriteInto,
): Promise<WrittenArchive> {
  const contents = await records.archiveContents(choice.instrumentIds);
  let byteCount = 0;
  const options = {
    createdAt: new Date().toISOString(),
    programVersion: PROGRAM_VERSION,
    leaveOut: choice.leaveOut,
    signal,
    createSpool: blobSpool,
    onProgress: seldom(({ table, rowCount }: { table: string; rowCount: number }) =>
      onProgress({ phase: 'writing', table, rowCount, byteCount }),
    ),
  };
  const desk = openByteWork();
  try {
    return await writeArchive(contents, { ...options, byteWork: desk.byteWork }, async (bytes) => {
      byteCount += bytes.length;
      await sink.write(bytes);
    });
  } finally {
    desk.close();
  }
}

function endOf(fault: unknown): WritingState {
  if (fault instanceof ArchiveFault && fault.reason === 'cancelled') return { phase: 'stopped' };
  return { phase: 'failed', message: fault instanceof Error ? fault.message : String(fault) };
}
