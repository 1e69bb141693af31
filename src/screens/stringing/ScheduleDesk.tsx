import { useDeferredValue } from 'react';
import type { ScheduleId } from '../../piano/ids.ts';
import type { StringingSchedule } from '../../piano/stringingRecords.ts';
import type { WireGrade } from '../../piano/wireGrade.ts';
import type { Records } from '../../records/records.ts';
import { CompareSection } from './CompareSection.tsx';
import { MeasuredSection } from './MeasuredSection.tsx';
import { ScaleSection } from './ScaleSection.tsx';
import { SchedulesSection } from './SchedulesSection.tsx';
import { SheetSection } from './SheetSection.tsx';
import { TryOutSection } from './TryOutSection.tsx';
import { useSchedule } from './useSchedule.ts';
import type { StringingPage } from './useStringing.ts';

type Props = {
  readonly records: Records;
  readonly page: StringingPage;
  readonly stored: StringingSchedule;
  readonly grades: readonly WireGrade[];
  readonly onChoose: (id: ScheduleId | null) => void;
};

/** One schedule on the desk: its sheet, what follows from it, and how it compares. The figures follow the sheet a moment later. */
export function ScheduleDesk({ records, page, stored, grades, onChoose }: Props) {
  const { instrument, surveys } = page;
  const editor = useSchedule(records, stored, instrument.compass);
  const schedule = useDeferredValue(editor.schedule);
  const schedules = page.schedules.map((one) => (one.id === schedule.id ? schedule : one));
  const shared = { records, instrument, schedule, grades };
  return (
    <>
      <SchedulesSection records={records} schedules={page.schedules} editor={editor} onChoose={onChoose} />
      <SheetSection instrument={instrument} editor={editor} grades={grades} />
      <ScaleSection {...shared} />
      <TryOutSection {...shared} schedules={schedules} onMade={onChoose} />
      <CompareSection {...shared} schedules={schedules} />
      <MeasuredSection {...shared} surveys={surveys} onRows={editor.setRows} />
    </>
  );
}
