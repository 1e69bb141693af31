import { useState } from 'react';
import type { ScheduleId } from '../../piano/ids.ts';
import type { StringingSchedule } from '../../piano/stringingRecords.ts';
import { newId } from '../../records/newId.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { Button } from '../../ui/Button.tsx';
import { DeleteButton } from '../../ui/DeleteButton.tsx';
import { SelectField, TextField } from '../../ui/Field.tsx';
import { FieldRow } from '../../ui/FormPage.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import { planOf, typedPitch } from './newSchedules.ts';
import { scheduleLabel } from './scheduleLabel.ts';
import styles from './stringing.module.css';
import type { ScheduleEditor } from './useSchedule.ts';

const words = texts.stringing.schedules;

type Props = {
  readonly records: Records;
  readonly schedules: readonly StringingSchedule[];
  readonly editor: ScheduleEditor;
  readonly onChoose: (id: ScheduleId | null) => void;
};

/** Which schedule is on the desk, what it is called, and plans from it. */
export function SchedulesSection({ records, schedules, editor, onChoose }: Props) {
  const { schedule } = editor;
  const [fault, setFault] = useState<WriteFailure | null>(null);
  const makePlan = async () => {
    const id = newId<ScheduleId>();
    const outcome = await records.saveSchedule(planOf(id, schedule, schedules));
    setFault(outcome.written ? null : outcome);
    if (outcome.written) onChoose(id);
  };
  return (
    <Section title={words.title} note={words.note}>
      <p className={styles.text}>{texts.stringing.intro}</p>
      <div className={styles.row}>
        <SelectField
          id="schedule-shown"
          label={words.choose}
          value={schedule.id}
          choices={schedules.map((one) => ({
            value: one.id,
            label: scheduleLabel(one.id === schedule.id ? schedule : one),
          }))}
          onChange={onChoose}
        />
        <Button onPress={() => void makePlan()}>{words.makePlan}</Button>
      </div>
      <WriteFault fault={fault} />
      <Details editor={editor} />
      <DeleteButton
        records={records}
        target={{ table: 'schedules' as const, id: schedule.id }}
        message={words.removed(schedule.name)}
        onDeleted={() => onChoose(null)}
      >
        {words.remove}
      </DeleteButton>
    </Section>
  );
}

/** Stored with every letter, but for what cannot be a name or a pitch. */
function Details({ editor: { schedule, setDetails } }: { readonly editor: ScheduleEditor }) {
  const [name, setName] = useState(schedule.name);
  const [pitch, setPitch] = useState(String(schedule.pitchStandardHz));
  const changeName = (text: string) => {
    setName(text);
    if (text.trim() !== '') setDetails({ name: text.trim() });
  };
  const changePitch = (text: string) => {
    setPitch(text);
    const pitchStandardHz = typedPitch(text);
    if (pitchStandardHz !== undefined) setDetails({ pitchStandardHz });
  };
  return (
    <>
      <FieldRow>
        <TextField
          id="schedule-name"
          label={words.name}
          value={name}
          onChange={changeName}
          error={name.trim() === '' ? words.nameMissing : undefined}
        />
        <TextField
          id="schedule-pitch"
          label={words.pitch}
          value={pitch}
          unit="Hz"
          isNumber
          hint={words.pitchHint}
          onChange={changePitch}
          error={typedPitch(pitch) === undefined ? words.pitchFault : undefined}
        />
      </FieldRow>
      <TextField
        id="schedule-remark"
        label={words.remark}
        value={schedule.remark}
        onChange={(remark) => setDetails({ remark })}
      />
    </>
  );
}
