import type { ReactNode } from 'react';
import styles from './Field.module.css';

type FieldFrameProps = {
  readonly id: string;
  readonly label: string;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
  readonly children: ReactNode;
};

/** Label above, hint and error below; the error is announced and says what to do. */
export function FieldFrame({ id, label, hint, error, children }: FieldFrameProps) {
  return (
    <div className={styles.field} data-has-error={error !== undefined}>
      <label className={styles.label} htmlFor={id}>
        {label}
      </label>
      {children}
      {hint && (
        <p className={styles.hint} id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <p className={styles.error} id={`${id}-error`} role="alert">
        {error && (
          <>
            <span aria-hidden="true">✕ </span>
            {error}
          </>
        )}
      </p>
    </div>
  );
}

export type TextFieldProps = {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
  readonly kind?: 'text' | 'date';
  /** The unit that belongs to a typed number, shown behind it. */
  readonly unit?: string;
  readonly isNumber?: boolean;
  readonly isLong?: boolean;
  readonly isShort?: boolean;
};

export function TextField(props: TextFieldProps) {
  const { id, label, value, onChange, hint, error, kind = 'text', unit, isNumber, isLong, isShort } = props;
  const shared = {
    id,
    value,
    'aria-describedby': `${hint ? `${id}-hint ` : ''}${id}-error`,
    'aria-invalid': error !== undefined,
    autoComplete: 'off',
  };
  return (
    <FieldFrame id={id} label={label} hint={hint} error={error}>
      {isLong ? (
        <textarea {...shared} className={styles.input} rows={3} onChange={(event) => onChange(event.target.value)} />
      ) : (
        <span className={styles.row}>
          <input
            {...shared}
            className={styles.input}
            type={kind}
            inputMode={isNumber ? 'decimal' : undefined}
            data-short={isShort ?? isNumber}
            onChange={(event) => onChange(event.target.value)}
          />
          {unit && <span className={styles.unit}>{unit}</span>}
        </span>
      )}
    </FieldFrame>
  );
}

export type Choice<Value extends string> = { readonly value: Value; readonly label: string };

type SelectFieldProps<Value extends string> = {
  readonly id: string;
  readonly label: string;
  readonly value: Value;
  readonly choices: readonly Choice<Value>[];
  readonly onChange: (value: Value) => void;
  readonly hint?: string;
  readonly error?: string | undefined;
};

export function SelectField<Value extends string>(props: SelectFieldProps<Value>) {
  const { id, label, value, choices, onChange, hint, error } = props;
  const pick = (picked: string) => {
    const choice = choices.find((candidate) => candidate.value === picked);
    if (choice) onChange(choice.value);
  };
  return (
    <FieldFrame id={id} label={label} hint={hint} error={error}>
      <select
        id={id}
        className={styles.input}
        value={value}
        aria-describedby={`${hint ? `${id}-hint ` : ''}${id}-error`}
        onChange={(event) => pick(event.target.value)}
      >
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.label}
          </option>
        ))}
      </select>
    </FieldFrame>
  );
}
