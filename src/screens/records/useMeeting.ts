import { useEffect, useRef, useState } from 'react';
import { ArchiveFault } from '../../files/archive/archiveFault.ts';
import type { MeetingReport } from '../../records/meeting.ts';
import type { Records } from '../../records/records.ts';
import { texts } from '../../ui/texts.ts';
import { chooseFolder, type Folder, mayWrite } from './fileAccess.ts';
import { meetInFolder, meetingFolder, setMeetingFolder } from './meetInFolder.ts';

export type MeetingState =
  | { readonly phase: 'none' | 'meeting' }
  | { readonly phase: 'done'; readonly report: MeetingReport }
  | { readonly phase: 'failed'; readonly message: string };

export type Meeting = {
  readonly folder: Folder | null;
  readonly state: MeetingState;
  readonly pick: () => Promise<void>;
  readonly meet: (folder: Folder) => Promise<void>;
  readonly stop: () => void;
};

export function useMeeting(records: Records): Meeting {
  const [folder, setFolder] = useState<Folder | null>(null);
  const [state, setState] = useState<MeetingState>({ phase: 'none' });
  const stopping = useRef(new AbortController());
  useEffect(() => {
    meetingFolder(records).then(setFolder, () => setFolder(null));
    return () => stopping.current.abort();
  }, [records]);
  const meet = async (place: Folder) => {
    stopping.current = new AbortController();
    setState({ phase: 'meeting' });
    try {
      if (!(await mayWrite(place, true))) return setState({ phase: 'failed', message: texts.records.meeting.denied });
      setState({ phase: 'done', report: await meetInFolder(records, place, stopping.current.signal) });
    } catch (fault) {
      const isStopped = fault instanceof ArchiveFault && fault.reason === 'cancelled';
      const message = fault instanceof Error ? fault.message : String(fault);
      setState(isStopped ? { phase: 'none' } : { phase: 'failed', message: texts.records.meeting.failed(message) });
    }
  };
  const pick = async () => {
    const chosen = await chooseFolder('meeting');
    if (!chosen) return;
    await setMeetingFolder(records, chosen);
    setFolder(chosen);
    await meet(chosen);
  };
  return { folder, state, pick, meet, stop: () => stopping.current.abort() };
}
