import { formatCount } from '../../piano/format.ts';
import type { MeetingReport } from '../../records/meeting.ts';
import type { Records } from '../../records/records.ts';
import { Button } from '../../ui/Button.tsx';
import { Notice } from '../../ui/Notice.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './records.module.css';
import { useMeeting } from './useMeeting.ts';

const words = texts.records.meeting;

export function MeetingSection({ records }: { readonly records: Records }) {
  const { folder, state, pick, meet, stop } = useMeeting(records);
  const isMeeting = state.phase === 'meeting';
  return (
    <Section title={words.title} note={words.note}>
      <p className={styles.hint}>{words.what}</p>
      <p className={styles.actions}>
        {folder && (
          <Button look="primary" isDisabled={isMeeting} onPress={() => void meet(folder)}>
            {words.meet(folder.name)}
          </Button>
        )}
        <Button isDisabled={isMeeting} onPress={() => void pick()}>
          {folder ? words.other : words.choose}
        </Button>
        {isMeeting && <Button onPress={stop}>{words.stop}</Button>}
      </p>
      <p role="status">
        {isMeeting && words.running}
        {state.phase === 'done' && reportWords(state.report)}
      </p>
      {state.phase === 'failed' && (
        <Notice kind="fault" word={texts.common.faultWord} isUrgent>
          {state.message}
        </Notice>
      )}
    </Section>
  );
}

function reportWords({ readCount, changedCount, rivalCount, unreadable, addedName }: MeetingReport): string {
  const files = formatCount(readCount, ...words.files);
  const records = formatCount(changedCount, ...words.records);
  const parts = [words.done(files, records, addedName !== null)];
  if (rivalCount > 0) parts.push(words.rivals);
  if (unreadable.length > 0) parts.push(words.unreadable(unreadable.join(', ')));
  return parts.join(' ');
}
