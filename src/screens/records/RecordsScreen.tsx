import type { Records } from '../../records/records.ts';
import { PageHeading } from '../../ui/PageHeading.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { texts } from '../../ui/texts.ts';
import { workshopTrail } from '../../ui/trails.ts';
import { BackupSection } from './BackupSection.tsx';
import { BinSection } from './BinSection.tsx';
import { ExportSection } from './ExportSection.tsx';
import { canChooseFolder } from './fileAccess.ts';
import { ImportSection } from './ImportSection.tsx';
import { MeetingSection } from './MeetingSection.tsx';
import { RivalSection } from './RivalSection.tsx';
import { StorageSection } from './StorageSection.tsx';
import { useBackup } from './useBackup.ts';

const words = texts.records;

export function RecordsScreen({ records }: { readonly records: Records }) {
  const backup = useBackup(records);
  const heading = <PageHeading title={words.title} trail={workshopTrail()} subtitle={words.lead} />;
  // What stands first, too: so nothing below it moves.
  if (backup.view.state === 'loading')
    return (
      <>
        {heading}
        <ReadState observed={backup.view} />
      </>
    );
  return (
    <>
      {heading}
      <RivalSection records={records} />
      <BackupSection backup={backup} />
      <ExportSection records={records} />
      <ImportSection records={records} />
      {canChooseFolder() && <MeetingSection records={records} />}
      <StorageSection records={records} />
      <BinSection records={records} />
    </>
  );
}
