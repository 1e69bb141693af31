import { type ReactNode, useEffect, useRef } from 'react';
import { DemonstrationMark } from './DemonstrationMark.tsx';
import styles from './PageHeading.module.css';
import { texts } from './texts.ts';

export type TrailStep = { readonly label: string; readonly href: string };

type PageHeadingProps = {
  readonly title: string;
  /** The way here from the workshop, for one step back at any depth. */
  readonly trail?: readonly TrailStep[];
  readonly subtitle?: ReactNode;
  /** Of a record that was made up to look around with. */
  readonly isInvented?: boolean;
  readonly actions?: ReactNode;
  /** On a screen where something else is large. */
  readonly isCompact?: boolean;
};

/** The screen's title. It takes the focus when the screen opens, so that keyboard and screen reader start at the top. */
export function PageHeading({ title, trail = [], subtitle, isInvented, actions, isCompact }: PageHeadingProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = `${title} · Stillpin`;
  }, [title]);
  useEffect(() => heading.current?.focus({ preventScroll: true }), []);
  return (
    <header className={styles.heading} data-compact={isCompact}>
      {trail.length > 0 && (
        <nav aria-label={texts.common.trail}>
          <ol className={styles.trail}>
            {trail.map((step) => (
              <li key={step.href}>
                <a href={step.href}>{step.label}</a>
              </li>
            ))}
          </ol>
        </nav>
      )}
      <div className={styles.row}>
        <div className={styles.titles}>
          <h1 ref={heading} tabIndex={-1}>
            {title}
          </h1>
          {(subtitle || isInvented) && (
            <div className={styles.subtitle}>
              {subtitle} {isInvented && <DemonstrationMark />}
            </div>
          )}
        </div>
        {actions && <div className={styles.actions}>{actions}</div>}
      </div>
    </header>
  );
}
