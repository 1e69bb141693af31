import { useState } from 'react';
import { type DeskSettings, deskSettingsToText, parseDeskSettings } from './deskSettings.ts';

const STORAGE_KEY = 'stillpin-desk';

export function useDeskSettings(): [DeskSettings, (settings: DeskSettings) => void] {
  const [settings, setSettings] = useState(() => parseDeskSettings(readStored()));
  const change = (next: DeskSettings) => {
    setSettings(next);
    try {
      window.localStorage.setItem(STORAGE_KEY, deskSettingsToText(next));
    } catch (error) {
      console.info('The click and the foot switch are not remembered: this browser keeps no settings here.', error);
    }
  };
  return [settings, change];
}

/** Private windows may refuse the question. */
function readStored(): string | null {
  try {
    return window.localStorage.getItem(STORAGE_KEY);
  } catch {
    return null;
  }
}
