import type { ReactNode } from 'react';
import styles from './FactList.module.css';

export type Fact = { readonly label: string; readonly value: ReactNode };

/** Labels and values in pairs. */
export function FactList({ facts }: { readonly facts: readonly Fact[] }) {
  return (
    <dl className={styles.facts}>
      {facts.map((fact) => (
        <div key={fact.label} className={styles.fact}>
          <dt>{fact.label}</dt>
          <dd>{fact.value}</dd>
        </div>
      ))}
    </dl>
  );
}
