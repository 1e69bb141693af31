import type { EventKind, Instrument } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import { Button } from '../../ui/Button.tsx';
import { SelectField, TextField } from '../../ui/Field.tsx';
import { FieldRow, FormPage } from '../../ui/FormPage.tsx';
import { Notice } from '../../ui/Notice.tsx';
import { texts } from '../../ui/texts.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import type { EventDraft } from './eventDraft.ts';
import styles from './instrument.module.css';
import { useEventForm } from './useEventForm.ts';

const words = texts.instrument.events;
const KINDS: readonly EventKind[] = ['restrung', 'string-replaced', 'pin-replaced', 'block-work', 'moved', 'tuned'];
const KIND_CHOICES = KINDS.map((value) => ({ value, label: words.kinds[value] }));

type Props = { readonly records: Records; readonly instrument: Instrument; readonly onDone: () => void };

export function EventForm({ records, instrument, onDone }: Props) {
  const form = useEventForm(records, instrument, onDone);
  const field = (key: Exclude<keyof EventDraft, 'kind'>) => {
    const fault = form.faults[key];
    return {
      id: `event-${key}`,
      value: form.draft[key],
      onChange: (value: string) => form.set({ [key]: value }),
      error: fault && words.faults[fault],
    };
  };
  return (
    <FormPage faults={form.faults} onSubmit={() => void form.save()}>
      <div className={styles.eventForm}>
        <h3>{words.form}</h3>
        <Notice kind="caution" word={texts.common.cautionWord}>
          {texts.common.tension}
        </Notice>
        <FieldRow>
          <TextField {...field('happenedOn')} label={words.date} kind="date" />
          <SelectField
            id="event-kind"
            label={words.kind}
            value={form.draft.kind}
            choices={KIND_CHOICES}
            onChange={(kind) => form.set({ kind })}
          />
        </FieldRow>
        <FieldRow>
          <TextField {...field('from')} label={words.from} isShort hint={words.rangeHint} />
          <TextField {...field('to')} label={words.to} isShort />
        </FieldRow>
        <TextField {...field('remark')} label={words.remark} isLong />
        <WriteFault fault={form.writeFault} />
        <FieldRow>
          <Button look="primary" isSubmit>
            {texts.common.save}
          </Button>
          <Button look="quiet" onPress={onDone}>
            {texts.common.cancel}
          </Button>
        </FieldRow>
      </div>
    </FormPage>
  );
}
