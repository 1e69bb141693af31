import { ChoiceField } from '../../ui/ChoiceField.tsx';
import { texts } from '../../ui/texts.ts';
import type { GaugeTyping } from './gaugeTyping.ts';

const words = texts.stringing.sheet;
const CHOICES = (['ask', 'inch', 'metric'] as const).map((value) => ({ value, label: words.typedChoices[value] }));

type Props = { readonly value: GaugeTyping; readonly onChange: (value: GaugeTyping) => void };

export function GaugeTypingField({ value, onChange }: Props) {
  return <ChoiceField name="gauge-typing" label={words.typed} value={value} choices={CHOICES} onChange={onChange} />;
}
