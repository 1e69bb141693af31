import { useState } from 'react';
import type { ScheduleRow } from '../../piano/stringingRecords.ts';
import { FilePicker } from '../../ui/FilePicker.tsx';
import { Notice } from '../../ui/Notice.tsx';
import { texts } from '../../ui/texts.ts';

type CsvPickerProps = {
  readonly children: string;
  readonly onRows: (rows: readonly ScheduleRow[], fileName: string) => void;
};

/** Reads a schedule from a CSV file, or says with its line what is wrong in it. */
export function CsvPicker({ children, onRows }: CsvPickerProps) {
  const [fault, setFault] = useState<string | null>(null);
  const read = async (file: File | undefined) => {
    if (!file) return;
    const { readScheduleCsv } = await import('../../files/scheduleCsv.ts');
    const schedule = readScheduleCsv(await file.text());
    setFault(schedule.ok ? null : texts.stringing.sheet.notBroughtIn(file.name, schedule.message));
    if (schedule.ok) onRows(schedule.rows, file.name);
  };
  return (
    <>
      <FilePicker accept=".csv,text/csv" onPick={([file]) => void read(file)}>
        {children}
      </FilePicker>
      {fault && (
        <Notice kind="fault" word={texts.common.faultWord} isUrgent>
          {fault}
        </Notice>
      )}
    </>
  );
}
