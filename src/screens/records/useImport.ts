import { useEffect, useRef, useState } from 'react';
import { ArchiveFault } from '../../files/archive/archiveFault.ts';
import type { ByteWork } from '../../files/archive/byteWork.ts';
import { type ArchiveReport, checkArchive } from '../../files/archive/checkArchive.ts';
import { openArchive } from '../../files/archive/readArchive.ts';
import type { MergeReport } from '../../records/mergeArchive.ts';
import type { Records } from '../../records/records.ts';
import { texts } from '../../ui/texts.ts';
import { openByteWork } from '../../workers/openByteWork.ts';
import { fileSource } from './fileSource.ts';
import { seldom } from './seldom.ts';

/** Set while an archive is brought in, so that an interruption is known afterwards. */
const RUNNING = 'import.running';

export type Seen = { readonly file: File; readonly report: ArchiveReport; readonly preview: MergeReport | null };

export type ImportState =
  | { readonly phase: 'none' }
  | { readonly phase: 'looking'; readonly share: number }
  | { readonly phase: 'seen'; readonly seen: Seen }
  | { readonly phase: 'bringing'; readonly share: number }
  | { readonly phase: 'done'; readonly report: MergeReport }
  | { readonly phase: 'stopped'; readonly wasWriting: boolean }
  | { readonly phase: 'failed'; readonly message: string };

export type Import = {
  readonly state: ImportState;
  /** The name of a file that was being brought in when the page ended. */
  readonly interrupted: string | null;
  readonly look: (file: File) => Promise<void>;
  readonly bringIn: (seen: Seen) => Promise<void>;
  readonly stop: () => void;
  readonly putAway: () => void;
};

/** First looks: whether the archive is whole and what it would change. Writes only when asked to. */
export function useImport(records: Records): Import {
  const [state, setState] = useState<ImportState>({ phase: 'none' });
  const [interrupted, setInterrupted] = useState<string | null>(null);
  const stopping = useRef(new AbortController());
  useEffect(() => {
    records.setting(RUNNING).then(
      (name) => setInterrupted(typeof name === 'string' ? name : null),
      () => setInterrupted(null),
    );
    return () => stopping.current.abort();
  }, [records]);
  const run = async (wasWriting: boolean, work: (signal: AbortSignal, byteWork: ByteWork) => Promise<ImportState>) => {
    stopping.current = new AbortController();
    const desk = openByteWork();
    try {
      setState(await work(stopping.current.signal, desk.byteWork));
    } catch (fault) {
      const isStopped = fault instanceof ArchiveFault && fault.reason === 'cancelled';
      setState(isStopped ? { phase: 'stopped', wasWriting } : { phase: 'failed', message: messageOf(fault) });
    } finally {
      desk.close();
    }
  };
  const look = (file: File) =>
    run(false, async (signal, byteWork) => {
      setState({ phase: 'looking', share: 0 });
      const onHalf = (from: number) =>
        seldom((share: number) => setState({ phase: 'looking', share: from + share / 2 }));
      const report = await checkArchive(fileSource(file), { signal, byteWork, onProgress: onHalf(0) });
      if (report.refusal !== null) return { phase: 'seen', seen: { file, report, preview: null } };
      const preview = await merge(
        records,
        { file, byteWork },
        {
          isDryRun: true,
          skipsFaults: true,
          signal,
          onProgress: onHalf(0.5),
        },
      );
      return { phase: 'seen', seen: { file, report, preview } };
    });
  const bringIn = ({ file }: Seen) =>
    run(true, async (signal, byteWork) => {
      setState({ phase: 'bringing', share: 0 });
      await records.saveSetting(RUNNING, file.name);
      const onProgress = seldom((share: number) => setState({ phase: 'bringing', share }));
      const report = await merge(records, { file, byteWork }, { skipsFaults: true, signal, onProgress });
      await records.saveSetting(RUNNING, null);
      setInterrupted(null);
      return { phase: 'done', report };
    });
  return {
    state,
    interrupted,
    look,
    bringIn,
    stop: () => stopping.current.abort(),
    putAway: () => setState({ phase: 'none' }),
  };
}

type MergeWish = NonNullable<Parameters<Records['mergeArchive']>[1]>;

type ToRead = { readonly file: File; readonly byteWork: ByteWork };

async function merge(records: Records, { file, byteWork }: ToRead, wish: MergeWish): Promise<MergeReport> {
  const outcome = await openArchive(fileSource(file), { byteWork });
  if (!outcome.opened) throw outcome.fault;
  return records.mergeArchive(outcome.archive, wish);
}

function messageOf(fault: unknown): string {
  const isFull = fault instanceof Error && /Quota/.test(`${fault.name} ${fault.message}`);
  if (isFull) return texts.records.import.full;
  return fault instanceof Error ? fault.message : String(fault);
}
