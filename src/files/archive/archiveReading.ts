/** What the steps of reading an archive share. */
import type { ByteSource } from '../audio/byteSource.ts';
import type { ArchiveRowKind } from './archiveContents.ts';
import type { ByteWork } from './byteWork.ts';
import type { DescribedFile } from './packageDescription.ts';
import type { Complain, KnownIds } from './readRows.ts';
import type { ZipEntry } from './zipDirectory.ts';

export type ArchiveReading = {
  readonly source: ByteSource;
  readonly byteWork: ByteWork;
  readonly files: ReadonlyMap<string, ZipEntry>;
  readonly resources: ReadonlyMap<string, DescribedFile>;
  readonly ids: KnownIds;
  readonly complain: Complain;
  isWanted(kind: ArchiveRowKind): boolean;
  /** Sounds and pictures that a row named. */
  readonly named: Set<string>;
};
