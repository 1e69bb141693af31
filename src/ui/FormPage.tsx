import { type FormEvent, type ReactNode, useEffect, useRef } from 'react';
import styles from './FormPage.module.css';

type FormPageProps = {
  /** Faults by field; a new set of them moves the focus to the first field at fault. */
  readonly faults: object;
  readonly onSubmit: () => void;
  readonly children: ReactNode;
};

export function FormPage({ faults, onSubmit, children }: FormPageProps) {
  const form = useRef<HTMLFormElement>(null);
  const faultCount = Object.keys(faults).length;
  const wasSubmitted = useRef(false);
  useEffect(() => {
    if (faultCount > 0 && wasSubmitted.current)
      form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
    wasSubmitted.current = false;
  }, [faultCount]);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    wasSubmitted.current = true;
    onSubmit();
  };
  return (
    <form ref={form} className={styles.form} onSubmit={submit} noValidate>
      {children}
    </form>
  );
}

export function FormActions({ children }: { readonly children: ReactNode }) {
  return <div className={styles.actions}>{children}</div>;
}

/** Fields side by side where there is room. */
export function FieldRow({ children }: { readonly children: ReactNode }) {
  return <div className={styles.row}>{children}</div>;
}
