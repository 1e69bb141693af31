import { Button } from '../../ui/Button.tsx';
import { texts } from '../../ui/texts.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import styles from './stringing.module.css';
import type { ScheduleEditor } from './useSchedule.ts';

const words = texts.stringing.schedules;

/** Whether all of the schedule is in the records. */
export function WritingState({ editor: { writing, saveAgain } }: { readonly editor: ScheduleEditor }) {
  return (
    <>
      <p className={styles.quiet} data-writing={writing.kind}>
        {words.writing[writing.kind]}
      </p>
      {writing.kind === 'failed' && (
        <>
          <WriteFault fault={writing.failure} />
          <Button look="primary" onPress={saveAgain}>
            {words.saveAgain}
          </Button>
        </>
      )}
    </>
  );
}
