import type { ReactNode } from 'react';
import styles from './CheckField.module.css';

type CheckFieldProps = {
  readonly label: string;
  readonly isChecked: boolean;
  readonly onChange: (isChecked: boolean) => void;
};

export function CheckField({ label, isChecked, onChange }: CheckFieldProps) {
  return (
    <label className={styles.check}>
      <input type="checkbox" checked={isChecked} onChange={(event) => onChange(event.target.checked)} />
      <span>{label}</span>
    </label>
  );
}

export function CheckGroup({ label, children }: { readonly label: string; readonly children: ReactNode }) {
  return (
    <fieldset className={styles.group}>
      <legend className={styles.label}>{label}</legend>
      {children}
    </fieldset>
  );
}
