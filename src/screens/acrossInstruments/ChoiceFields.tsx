import type { Grouping } from '../../stability/acrossInstruments/heldGroups.ts';
import type { Alarm } from '../../stability/acrossInstruments/heldSpan.ts';
import { ChoiceField } from '../../ui/ChoiceField.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './acrossInstruments.module.css';
import type { HeldChoices, Whose } from './heldView.ts';

const words = texts.held.choices;
const ALARMS: readonly Alarm[] = ['watch', 'giving way'];
const GROUPINGS: readonly Grouping[] = ['block', 'work'];
const WHOSE: readonly Whose[] = ['own', 'invented'];
const ALARM_CHOICES = ALARMS.map((value) => ({ value, label: words.alarms[value] }));
const GROUPING_CHOICES = GROUPINGS.map((value) => ({ value, label: words.groupings[value] }));
const WHOSE_CHOICES = WHOSE.map((value) => ({ value, label: words[value] }));

type Props = {
  readonly choices: HeldChoices;
  /** Whether there are own instruments and invented ones. */
  readonly hasBoth: boolean;
  readonly onChange: (change: Partial<HeldChoices>) => void;
};

export function ChoiceFields({ choices, hasBoth, onChange }: Props) {
  return (
    <div className={styles.choices}>
      <ChoiceField
        name="held-alarm"
        label={words.alarm}
        value={choices.alarm}
        choices={ALARM_CHOICES}
        onChange={(alarm) => onChange({ alarm })}
      />
      <ChoiceField
        name="held-grouping"
        label={words.grouping}
        value={choices.grouping}
        choices={GROUPING_CHOICES}
        onChange={(grouping) => onChange({ grouping })}
      />
      {hasBoth && (
        <ChoiceField
          name="held-whose"
          label={words.whose}
          value={choices.whose}
          choices={WHOSE_CHOICES}
          onChange={(whose) => onChange({ whose })}
        />
      )}
    </div>
  );
}
