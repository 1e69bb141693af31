import { useState } from 'react';
import type { ScheduleId } from '../../piano/ids.ts';
import type { Instrument } from '../../piano/instrument.ts';
import type { ScheduleRow } from '../../piano/stringingRecords.ts';
import { newId } from '../../records/newId.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { emptySchedule } from '../../stringing/schedule/scheduleRows.ts';
import { Button } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import { CsvPicker } from './CsvPicker.tsx';
import { scheduleAsItIs, withRowsOfFile } from './newSchedules.ts';

const words = texts.stringing.schedules;

type Props = {
  readonly records: Records;
  readonly instrument: Instrument;
  readonly onMade: (id: ScheduleId) => void;
};

export function NoSchedule({ records, instrument, onMade }: Props) {
  const [fault, setFault] = useState<WriteFailure | null>(null);
  const begin = async (rows?: readonly ScheduleRow[]) => {
    const id = newId<ScheduleId>();
    const outcome = await records.saveSchedule(scheduleAsItIs(id, instrument, rows));
    setFault(outcome.written ? null : outcome);
    if (outcome.written) onMade(id);
  };
  return (
    <Section title={words.title} note={words.note}>
      <EmptyState
        actions={
          <>
            <Button look="primary" onPress={() => void begin()}>
              {words.beginAsItIs}
            </Button>
            <CsvPicker onRows={(rows) => void begin(withRowsOfFile(emptySchedule(instrument.compass), rows))}>
              {words.bringIn}
            </CsvPicker>
          </>
        }
      >
        <p>{words.empty}</p>
      </EmptyState>
      <WriteFault fault={fault} />
    </Section>
  );
}
