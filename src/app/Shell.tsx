import { type ReactNode, useEffect, useState } from 'react';
import { routeToHref } from '../ui/routes.ts';
import { ThemeSwitch } from '../ui/ThemeSwitch.tsx';
import { texts } from '../ui/texts.ts';
import { UndoBar } from '../ui/UndoBar.tsx';
import styles from './Shell.module.css';
import { applyTheme, rememberedTheme, rememberTheme } from './theme.ts';

/** What stands around every screen. */
export function Shell({ children }: { readonly children: ReactNode }) {
  const [theme, setTheme] = useState(rememberedTheme);
  useEffect(() => applyTheme(theme), [theme]);
  return (
    <div className={styles.shell}>
      <button type="button" className={styles.skip} onClick={() => document.querySelector('main')?.focus()}>
        {texts.common.skipToContent}
      </button>
      <header className={styles.top}>
        <a className={styles.home} href="#/">
          {texts.common.productName}
        </a>
        <a className={styles.place} href={routeToHref({ screen: 'records' })}>
          {texts.records.title}
        </a>
        <ThemeSwitch
          choice={theme}
          onChoose={(choice) => {
            rememberTheme(choice);
            setTheme(choice);
          }}
        />
      </header>
      <main className={styles.main} tabIndex={-1}>
        {children}
      </main>
      <UndoBar />
    </div>
  );
}
