import { ChoiceField } from '../../ui/ChoiceField.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { FieldRow } from '../../ui/FormPage.tsx';
import { texts } from '../../ui/texts.ts';
import { choice, NOISES, NOTE_COUNTS, PIN_COUNTS, RATES, VISITS, type WhatIfDraft } from './whatIfDraft.ts';

const words = texts.stability.whatIf;

type FieldsProps = { readonly draft: WhatIfDraft; readonly onChange: (change: Partial<WhatIfDraft>) => void };

/** What is wrong with the invented pianos, and how they are looked after. */
export function WhatIfFields({ draft, onChange }: FieldsProps) {
  return (
    <>
      <ChoiceField
        name="what-if-fault"
        label={words.fault}
        value={draft.fault}
        choices={(['pins', 'zone', 'none'] as const).map((value) => ({ value, label: words.faults[value] }))}
        onChange={(fault) => onChange({ fault })}
      />
      <FieldRow>
        {draft.fault === 'pins' && (
          <SelectField
            id="what-if-pins"
            label={words.pinCount}
            value={draft.pinCount}
            choices={PIN_COUNTS.map(choice)}
            onChange={(pinCount) => onChange({ pinCount })}
          />
        )}
        {draft.fault === 'zone' && (
          <SelectField
            id="what-if-notes"
            label={words.noteCount}
            value={draft.noteCount}
            choices={NOTE_COUNTS.map(choice)}
            onChange={(noteCount) => onChange({ noteCount })}
          />
        )}
        {draft.fault !== 'none' && (
          <SelectField
            id="what-if-rate"
            label={words.rate}
            value={draft.rate}
            choices={RATES.map(choice)}
            onChange={(rate) => onChange({ rate })}
          />
        )}
        <SelectField
          id="what-if-visits"
          label={words.visits}
          value={draft.visits}
          choices={VISITS.map(choice)}
          onChange={(visits) => onChange({ visits })}
        />
        <SelectField
          id="what-if-noise"
          label={words.noise}
          value={draft.noise}
          choices={NOISES.map((value) => ({ value, label: words.noises[value] }))}
          onChange={(noise) => onChange({ noise })}
        />
        <SelectField
          id="what-if-humidity"
          label={words.humidity}
          value={draft.humidity}
          choices={(['noted', 'unnoted'] as const).map((value) => ({ value, label: words.humidities[value] }))}
          onChange={(humidity) => onChange({ humidity })}
        />
      </FieldRow>
    </>
  );
}
