import styles from './Field.module.css';
import type { Choice } from './Field.tsx';

type ChoiceFieldProps<Value extends string> = {
  readonly name: string;
  readonly label: string;
  readonly value: Value;
  readonly choices: readonly Choice<Value>[];
  readonly onChange: (value: Value) => void;
};

/** A few choices, all in sight: radio buttons under a common heading. */
export function ChoiceField<Value extends string>({ name, label, value, choices, onChange }: ChoiceFieldProps<Value>) {
  return (
    <fieldset className={styles.choices}>
      <legend className={styles.label}>{label}</legend>
      <div className={styles.choiceRow}>
        {choices.map((choice) => (
          <label key={choice.value} className={styles.choice}>
            <input
              type="radio"
              name={name}
              value={choice.value}
              checked={choice.value === value}
              onChange={() => onChange(choice.value)}
            />
            <span>{choice.label}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
