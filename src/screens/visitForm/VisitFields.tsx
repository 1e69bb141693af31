import { shownUnits } from '../../piano/formatUnits.ts';
import { ChoiceField } from '../../ui/ChoiceField.tsx';
import { type Choice, TextField } from '../../ui/Field.tsx';
import { FieldRow } from '../../ui/FormPage.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import type { VisitForm } from './useVisitForm.ts';
import type { PitchChoice, VisitDraft } from './visitDraft.ts';

const words = texts.visit.form;
const PITCH_CHOICES: readonly Choice<PitchChoice>[] = [
  { value: '440', label: '440 Hz' },
  { value: '435', label: '435 Hz' },
  { value: 'other', label: words.pitchOther },
];

type Props = { readonly form: VisitForm };

function fieldOf({ draft, faults, set }: VisitForm, key: Exclude<keyof VisitDraft, 'pitchChoice'>) {
  const fault = faults[key];
  return {
    id: `visit-${key}`,
    value: draft[key],
    onChange: (value: string) => set({ [key]: value }),
    error: fault && words.faults[fault],
  };
}

export function WhenFields({ form }: Props) {
  return (
    <Section title={words.when}>
      <FieldRow>
        <TextField {...fieldOf(form, 'visitedOn')} label={words.date} kind="date" />
        <TextField {...fieldOf(form, 'visitedBy')} label={words.by} />
      </FieldRow>
    </Section>
  );
}

export function ClimateFields({ form }: Props) {
  return (
    <Section title={words.climate} note={words.climateNote}>
      <FieldRow>
        <TextField {...fieldOf(form, 'humidity')} label={words.humidity} unit="%" isNumber />
        <TextField
          {...fieldOf(form, 'temperature')}
          label={words.temperature}
          unit={shownUnits().temperature}
          isNumber
        />
      </FieldRow>
    </Section>
  );
}

export function PitchFields({ form }: Props) {
  return (
    <Section title={words.pitch}>
      <ChoiceField
        name="pitch"
        label={words.pitchStandard}
        value={form.draft.pitchChoice}
        choices={PITCH_CHOICES}
        onChange={(pitchChoice) => form.set({ pitchChoice })}
      />
      {form.draft.pitchChoice === 'other' && (
        <TextField {...fieldOf(form, 'pitchHz')} label={words.pitchHz} unit="Hz" isNumber />
      )}
      <TextField {...fieldOf(form, 'remark')} label={words.remark} hint={words.remarkHint} isLong />
    </Section>
  );
}
