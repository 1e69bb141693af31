/** The page's brightness: as the device says, unless the user chose; the choice is remembered on this device. */
import type { ThemeChoice } from '../ui/ThemeSwitch.tsx';

const STORAGE_KEY = 'stillpin-theme';
const dark = window.matchMedia('(prefers-color-scheme: dark)');

export function rememberedTheme(): ThemeChoice {
  const stored = readStored();
  return stored === 'light' || stored === 'dark' ? stored : 'device';
}

export function rememberTheme(choice: ThemeChoice): void {
  try {
    window.localStorage.setItem(STORAGE_KEY, choice);
  } catch (error) {
    console.info('The brightness is not remembered: this browser keeps no settings for this page.', error);
  }
}

/** Puts the choice on the page and keeps following the device where that is the choice. Returns how to stop. */
export function applyTheme(choice: ThemeChoice): () => void {
  const apply = () => {
    document.documentElement.dataset.theme = choice === 'device' ? (dark.matches ? 'dark' : 'light') : choice;
  };
  apply();
  dark.addEventListener('change', apply);
  return () => dark.removeEventListener('change', apply);
}

/** Private windows may refuse the question. */
function readStored(): string | null {
  try {
    return window.localStorage.getItem(STORAGE_KEY);
  } catch {
    return null;
  }
}
