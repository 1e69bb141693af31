import { formatDiameter } from '../../piano/formatTorque.ts';
import { shownUnits } from '../../piano/formatUnits.ts';
import type { InstrumentKind } from '../../piano/instrument.ts';
import { PIN_SIZES } from '../../piano/tuningPin.ts';
import { ChoiceField } from '../../ui/ChoiceField.tsx';
import { type Choice, SelectField, TextField } from '../../ui/Field.tsx';
import { FieldRow } from '../../ui/FormPage.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import type { CompassChoice, InstrumentDraft, PinBlockChoice } from './instrumentDraft.ts';
import type { InstrumentForm } from './useInstrumentForm.ts';

const words = texts.workshop.form;
const KINDS: readonly InstrumentKind[] = ['grand', 'upright', 'square', 'other'];
const KIND_CHOICES = KINDS.map((value) => ({ value, label: texts.workshop.kinds[value] }));
const COMPASS_CHOICES: readonly Choice<CompassChoice>[] = [
  { value: '88', label: words.compass88 },
  { value: '85', label: words.compass85 },
  { value: 'other', label: words.compassOther },
];

const BLOCK_KINDS: readonly PinBlockChoice[] = [
  'not said',
  'original',
  'repaired in place',
  'solid planks',
  'laminated',
  'densified laminate',
  'other',
];
const BLOCK_CHOICES = BLOCK_KINDS.map((value) => ({ value, label: words.pinBlockKinds[value] }));

const PIN_SIZE_TEXT = PIN_SIZES.map(({ name, diameterMm }) => `${name} ${formatDiameter(diameterMm)}`).join(', ');

type Props = { readonly form: InstrumentForm };
type TextKey = Exclude<keyof InstrumentDraft, 'kind' | 'compassChoice' | 'pinBlockKind'>;

/** What a text field of the draft needs: its value, how to change it, what is wrong with it. */
function fieldOf({ draft, faults, set }: InstrumentForm, key: TextKey) {
  const fault = faults[key];
  return {
    id: `instrument-${key}`,
    value: draft[key],
    onChange: (value: string) => set({ [key]: value }),
    error: fault && words.faults[fault],
  };
}

export function IdentityFields({ form }: Props) {
  return (
    <Section title={words.identity}>
      <TextField {...fieldOf(form, 'name')} label={words.name} hint={words.nameHint} />
      <ChoiceField
        name="kind"
        label={words.kind}
        value={form.draft.kind}
        choices={KIND_CHOICES}
        onChange={(kind) => form.set({ kind })}
      />
      <FieldRow>
        <TextField {...fieldOf(form, 'builtYear')} label={words.builtYear} isNumber />
        <TextField {...fieldOf(form, 'serialNumber')} label={words.serialNumber} />
      </FieldRow>
      <FieldRow>
        <TextField {...fieldOf(form, 'ownerName')} label={words.ownerName} />
        <TextField {...fieldOf(form, 'ownerAddress')} label={words.ownerAddress} hint={words.ownerHint} />
      </FieldRow>
    </Section>
  );
}

export function RowFields({ form }: Props) {
  return (
    <Section title={words.rows} note={words.rowsNote}>
      <ChoiceField
        name="compass"
        label={words.compass}
        value={form.draft.compassChoice}
        choices={COMPASS_CHOICES}
        onChange={(compassChoice) => form.set({ compassChoice })}
      />
      {form.draft.compassChoice === 'other' && (
        <FieldRow>
          <TextField {...fieldOf(form, 'lowest')} label={words.lowest} isShort />
          <TextField {...fieldOf(form, 'highest')} label={words.highest} isShort />
        </FieldRow>
      )}
      <TextField {...fieldOf(form, 'bassTop')} label={words.bassTop} hint={words.bassTopHint} isShort />
      <TextField {...fieldOf(form, 'struts')} label={words.struts} hint={words.strutsHint} />
    </Section>
  );
}

export function BlockFields({ form }: Props) {
  return (
    <Section title={words.work}>
      <SelectField
        id="instrument-pinBlockKind"
        label={words.pinBlockKind}
        value={form.draft.pinBlockKind}
        choices={BLOCK_CHOICES}
        onChange={(pinBlockKind) => form.set({ pinBlockKind })}
        hint={words.pinBlockKindHint}
      />
      <TextField {...fieldOf(form, 'pinBlock')} label={words.pinBlock} hint={words.pinBlockHint} />
      <TextField
        {...fieldOf(form, 'pinDiameter')}
        label={words.pinDiameter}
        unit={shownUnits().length}
        hint={words.pinDiameterHint(PIN_SIZE_TEXT)}
        isNumber
      />
      <TextField {...fieldOf(form, 'remark')} label={words.remark} isLong />
    </Section>
  );
}
