import { formatDate } from '../../piano/format.ts';
import { REMINDER_DAYS, type ReminderDays } from '../../records/backupAge.ts';
import { Button } from '../../ui/Button.tsx';
import { FactList } from '../../ui/FactList.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { Notice } from '../../ui/Notice.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { canChooseFolder, type Folder } from './fileAccess.ts';
import styles from './records.module.css';
import type { Backup } from './useBackup.ts';
import { WritingStatus } from './WritingStatus.tsx';

const words = texts.records.backup;

export function BackupSection({ backup }: { readonly backup: Backup }) {
  if (backup.view.state !== 'ready') return <ReadState observed={backup.view} />;
  const { age, folder } = backup.view.value;
  const facts = [
    { label: words.last, value: age.lastAt === null ? words.never : formatDate(age.lastAt) },
    { label: words.since, value: age.surveysSince },
  ];
  return (
    <Section title={words.title} note={words.note}>
      <FactList facts={facts} />
      <BackupButtons backup={backup} folder={folder} />
      <p className={styles.hint}>{canChooseFolder() ? words.keep : words.noFolder}</p>
      {backup.wasDenied && (
        <Notice kind="fault" word={texts.common.faultWord} isUrgent>
          {words.denied}
        </Notice>
      )}
      <WritingStatus writing={backup.writing} />
      <SelectField
        id="backup-reminder"
        label={words.remind}
        value={String(age.reminderDays)}
        choices={REMINDER_DAYS.map((days) => ({ value: String(days), label: words.days[days] }))}
        onChange={(days) => void backup.remindAfter(Number(days) as ReminderDays)}
      />
    </Section>
  );
}

function BackupButtons({ backup, folder }: { readonly backup: Backup; readonly folder: Folder | null }) {
  const isDisabled = backup.writing.state.phase === 'writing';
  const hasFolders = canChooseFolder();
  return (
    <p className={styles.actions}>
      {folder && (
        <Button look="primary" isDisabled={isDisabled} onPress={() => void backup.toFolder(folder)}>
          {words.toFolder(folder.name)}
        </Button>
      )}
      {hasFolders && (
        <Button look={folder ? 'plain' : 'primary'} isDisabled={isDisabled} onPress={() => void backup.pickFolder()}>
          {folder ? words.otherFolder : words.chooseFolder}
        </Button>
      )}
      <Button look={hasFolders ? 'plain' : 'primary'} isDisabled={isDisabled} onPress={() => void backup.toDownload()}>
        {words.download}
      </Button>
    </p>
  );
}
