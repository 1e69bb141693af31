import type { ReactNode } from 'react';
import styles from './Button.module.css';
import { classNames } from './classNames.ts';

export type ButtonLook = 'primary' | 'plain' | 'quiet';
type Common = { readonly children: ReactNode; readonly look?: ButtonLook; readonly isLarge?: boolean };

type ButtonProps = Common & {
  readonly onPress?: () => void;
  readonly isSubmit?: boolean;
  readonly isDisabled?: boolean;
  readonly isPressed?: boolean;
  /** The key that does the same, shown on the button and told to screen readers. */
  readonly shortcut?: string;
  readonly label?: string;
};

export function Button(props: ButtonProps) {
  const { children, look = 'plain', isLarge, onPress, isSubmit, isDisabled, isPressed, shortcut, label } = props;
  return (
    <button
      type={isSubmit ? 'submit' : 'button'}
      className={lookOf(look, isLarge)}
      disabled={isDisabled}
      aria-pressed={isPressed}
      aria-keyshortcuts={shortcut}
      aria-label={label}
      onClick={onPress}
    >
      {children}
      {shortcut && <kbd className={styles.shortcut}>{shortcut}</kbd>}
    </button>
  );
}

/** Looks like a button, is a link: it can be opened in a new tab and gone back from. */
export function LinkButton({ href, children, look = 'plain', isLarge }: Common & { readonly href: string }) {
  return (
    <a className={lookOf(look, isLarge)} href={href}>
      {children}
    </a>
  );
}

function lookOf(look: ButtonLook, isLarge: boolean | undefined): string {
  return classNames(styles.button, styles[look], isLarge && styles.large);
}
