import { SelectField } from './Field.tsx';
import { texts } from './texts.ts';

export type ThemeChoice = 'device' | 'light' | 'dark';
const THEMES: readonly ThemeChoice[] = ['device', 'light', 'dark'];

type ThemeSwitchProps = { readonly choice: ThemeChoice; readonly onChoose: (choice: ThemeChoice) => void };

export function ThemeSwitch({ choice, onChoose }: ThemeSwitchProps) {
  return (
    <SelectField
      id="settings-theme"
      label={texts.common.theme.label}
      value={choice}
      choices={THEMES.map((value) => ({ value, label: texts.common.theme[value] }))}
      onChange={onChoose}
    />
  );
}
