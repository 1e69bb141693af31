import { type ReactNode, useEffect, useId, useRef } from 'react';
import { Button } from './Button.tsx';
import styles from './Dialog.module.css';
import { texts } from './texts.ts';

type DialogProps = { readonly title: string; readonly onClose: () => void; readonly children: ReactNode };

/** A sheet above the page. Escape closes it, the focus stays inside and returns to where it was: the browser's own dialog. */
export function Dialog({ title, onClose, children }: DialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  useEffect(() => {
    const element = dialog.current;
    element?.showModal();
    return () => element?.close();
  }, []);
  /** The event comes a moment after closing; where the sheet was opened again meanwhile, as React's strict mode does, it is stale. */
  const tellClosed = () => {
    if (!dialog.current?.open) onClose();
  };
  return (
    <dialog ref={dialog} className={styles.dialog} aria-labelledby={titleId} onClose={tellClosed}>
      <header className={styles.head}>
        <h2 id={titleId}>{title}</h2>
        <Button isLarge onPress={() => dialog.current?.close()}>
          {texts.common.close}
        </Button>
      </header>
      <div className={styles.body}>{children}</div>
    </dialog>
  );
}
