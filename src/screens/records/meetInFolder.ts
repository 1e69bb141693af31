/** The shared folder of this device, and meeting in it. */
import type { MeetingReport } from '../../records/meeting.ts';
import type { MeetingPlace } from '../../records/meetingPlace.ts';
import type { Records } from '../../records/records.ts';
import { PROGRAM_VERSION } from '../../ui/programVersion.ts';
import { folderSink } from './archiveSink.ts';
import { type Folder, isFolder, mayWrite } from './fileAccess.ts';
import { fileSource } from './fileSource.ts';

const FOLDER = 'meeting.folder';
/** One page of this browser at a time. */
const LOCK = 'stillpin meeting';

export async function meetingFolder(records: Pick<Records, 'setting'>): Promise<Folder | null> {
  const folder = await records.setting(FOLDER);
  return isFolder(folder) ? folder : null;
}

export async function setMeetingFolder(records: Records, folder: Folder): Promise<void> {
  await records.forgetMeeting();
  await records.saveSetting(FOLDER, folder);
}

export function meetInFolder(records: Records, folder: Folder, signal?: AbortSignal): Promise<MeetingReport> {
  const options = { now: new Date().toISOString(), programVersion: PROGRAM_VERSION, ...(signal && { signal }) };
  const meet = () => records.meet(placeOf(folder), options);
  const locks = (navigator as { locks?: LockManager }).locks;
  return locks ? locks.request(LOCK, meet) : meet();
}

/** Where a folder was chosen before and the browser asks nobody any more; null otherwise. */
export async function meetQuietly(records: Records): Promise<MeetingReport | null> {
  const folder = await meetingFolder(records);
  return folder && (await mayWrite(folder, false)) ? meetInFolder(records, folder) : null;
}

function placeOf(folder: Folder): MeetingPlace {
  return {
    names: async () => {
      const names: string[] = [];
      for await (const entry of folder.values()) if (entry.kind === 'file') names.push(entry.name);
      return names;
    },
    open: async (name) => fileSource(await (await folder.getFileHandle(name)).getFile()),
    create: (name) => folderSink(folder, name),
  };
}
