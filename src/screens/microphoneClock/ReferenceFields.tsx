import type { ClockReference } from '../../piano/clock.ts';
import { shownUnits } from '../../piano/formatUnits.ts';
import { ChoiceField } from '../../ui/ChoiceField.tsx';
import { type Choice, TextField } from '../../ui/Field.tsx';
import { FieldRow } from '../../ui/FormPage.tsx';
import { texts } from '../../ui/texts.ts';
import { ofKind, type ReferenceDraft, type ReferenceFaults } from './referenceDraft.ts';

const words = texts.clock.reference;
const KINDS: readonly Choice<ClockReference['kind']>[] = [
  { value: 'tone', label: words.kinds.tone },
  { value: 'fork', label: words.kinds.fork },
];

type Props = {
  readonly draft: ReferenceDraft;
  readonly faults: ReferenceFaults;
  readonly onChange: (draft: ReferenceDraft) => void;
};

export function ReferenceFields({ draft, faults, onChange }: Props) {
  const field = (key: Exclude<keyof ReferenceDraft, 'kind'>, label: string, unit: string, hint?: string) => {
    const fault = faults[key];
    return (
      <TextField
        id={`reference-${key}`}
        label={label}
        value={draft[key]}
        onChange={(value) => onChange({ ...draft, [key]: value })}
        unit={unit}
        hint={hint}
        error={fault && words.faults[fault]}
        isNumber
      />
    );
  };
  return (
    <>
      <ChoiceField
        name="reference"
        label={words.kind}
        value={draft.kind}
        choices={KINDS}
        onChange={(kind) => onChange(ofKind(draft, kind))}
      />
      {draft.kind === 'tone' && <p>{words.toneCaution}</p>}
      <FieldRow>
        {field('frequency', words.frequency, 'Hz')}
        {field('uncertainty', words.uncertainty, 'Hz', words.uncertaintyHint[draft.kind])}
      </FieldRow>
      {draft.kind === 'fork' && (
        <FieldRow>
          {field('statedAt', words.statedAt, shownUnits().temperature)}
          {field('temperature', words.temperature, shownUnits().temperature, words.temperatureHint)}
        </FieldRow>
      )}
    </>
  );
}
