import { useState } from 'react';
import { BACKUP_SETTINGS, type BackupAge, backupAge, type ReminderDays } from '../../records/backupAge.ts';
import type { Records } from '../../records/records.ts';
import { texts } from '../../ui/texts.ts';
import { type Observed, useObserved } from '../../ui/useObserved.ts';
import { downloadSink, folderSink } from './archiveSink.ts';
import { archiveName, WHOLE } from './exportChoice.ts';
import { chooseFolder, type Folder, isFolder, mayWrite } from './fileAccess.ts';
import { type ArchiveWriting, useArchiveWriting } from './useArchiveWriting.ts';

const words = texts.records.backup;

export type Backup = {
  readonly view: Observed<{ readonly age: BackupAge; readonly folder: Folder | null }>;
  readonly writing: ArchiveWriting;
  /** True after the browser refused to write into the folder. */
  readonly wasDenied: boolean;
  readonly toFolder: (folder: Folder) => Promise<void>;
  readonly pickFolder: () => Promise<void>;
  readonly toDownload: () => Promise<void>;
  readonly remindAfter: (days: ReminderDays) => Promise<void>;
};

export function useBackup(records: Records): Backup {
  const view = useObserved<{ age: BackupAge; folder: Folder | null }>('backup', (onValue, onFault) =>
    records.observe(() => readView(records), onValue, onFault),
  );
  const writing = useArchiveWriting(records);
  const [wasDenied, setDenied] = useState(false);
  const backUp = async (openSink: (name: string) => ReturnType<typeof folderSink>) => {
    const startedAt = new Date();
    const name = archiveName([], startedAt, words.suggested);
    const isWhole = await writing.write(name, WHOLE, () => openSink(name));
    if (isWhole) await records.saveSetting(BACKUP_SETTINGS.lastAt, startedAt.toISOString());
  };
  const toFolder = async (folder: Folder) => {
    const isAllowed = await mayWrite(folder, true);
    setDenied(!isAllowed);
    if (isAllowed) await backUp((name) => folderSink(folder, name));
  };
  const pickFolder = async () => {
    const folder = await chooseFolder('backup');
    if (!folder) return;
    await records.saveSetting(BACKUP_SETTINGS.folder, folder);
    await toFolder(folder);
  };
  const toDownload = () => backUp(async (name) => downloadSink(name));
  const remindAfter = async (days: ReminderDays) => {
    await records.saveSetting(BACKUP_SETTINGS.reminderDays, days);
  };
  return { view, writing, wasDenied, toFolder, pickFolder, toDownload, remindAfter };
}

async function readView(records: Records) {
  const age = await backupAge(records);
  const folder = await records.setting(BACKUP_SETTINGS.folder);
  return { age, folder: isFolder(folder) ? folder : null };
}
