import styles from './ThemeSwitch.module.css';
import { texts } from './texts.ts';

export type ThemeChoice = 'device' | 'light' | 'dark';
const CHOICES: readonly ThemeChoice[] = ['device', 'light', 'dark'];

type ThemeSwitchProps = { readonly choice: ThemeChoice; readonly onChoose: (choice: ThemeChoice) => void };

export function ThemeSwitch({ choice, onChoose }: ThemeSwitchProps) {
  const pick = (picked: string) => {
    const found = CHOICES.find((candidate) => candidate === picked);
    if (found) onChoose(found);
  };
  return (
    <select
      className={styles.select}
      aria-label={texts.common.theme.label}
      value={choice}
      onChange={(event) => pick(event.target.value)}
    >
      {CHOICES.map((value) => (
        <option key={value} value={value}>
          {texts.common.theme[value]}
        </option>
      ))}
    </select>
  );
}
