import type { ReactNode } from 'react';
import { formatSize } from '../../piano/formatSize.ts';
import { storageRoom } from '../../records/storageRoom.ts';
import type { StorageStatus } from '../../records/storageStatus.ts';
import { Notice } from '../../ui/Notice.tsx';
import { texts } from '../../ui/texts.ts';

const words = texts.records.storage;

/** Says so where the next survey may find no room; nothing where it will. */
export function RoomNotice({ status, children }: { readonly status: StorageStatus; readonly children?: ReactNode }) {
  const room = storageRoom(status);
  if (room === 'enough') return null;
  const free = formatSize(Math.max(0, (status.quotaBytes ?? 0) - (status.usedBytes ?? 0)));
  return (
    <Notice kind="caution" word={texts.common.cautionWord}>
      {room === 'little' ? words.little(free) : words.figuresOnly(free)} {children}
    </Notice>
  );
}
