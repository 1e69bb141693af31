import { type ReactNode, useEffect, useState } from 'react';
import { Button } from '../ui/Button.tsx';
import { routeToHref } from '../ui/routes.ts';
import { ThemeSwitch } from '../ui/ThemeSwitch.tsx';
import { texts } from '../ui/texts.ts';
import { UndoBar } from '../ui/UndoBar.tsx';
import { SettingsDialog } from './SettingsDialog.tsx';
import styles from './Shell.module.css';
import { applyTheme, rememberedTheme, rememberTheme } from './theme.ts';

type ShellProps = { readonly isBusy: boolean; readonly children: ReactNode };

/** What stands around every screen. */
export function Shell({ isBusy, children }: ShellProps) {
  const [theme, setTheme] = useState(rememberedTheme);
  const [isSetting, setSetting] = useState(false);
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
        <Button look="quiet" onPress={() => setSetting(true)}>
          {texts.common.settings.title}
        </Button>
      </header>
      <main className={styles.main} tabIndex={-1}>
        {children}
      </main>
      {!isBusy && (
        <footer className={styles.foot}>
          <a href={routeToHref({ screen: 'method' })}>{texts.method.title}</a>
        </footer>
      )}
      <UndoBar />
      {isSetting && (
        <SettingsDialog isBusy={isBusy} onClose={() => setSetting(false)}>
          <ThemeSwitch
            choice={theme}
            onChoose={(choice) => {
              rememberTheme(choice);
              setTheme(choice);
            }}
          />
        </SettingsDialog>
      )}
    </div>
  );
}
