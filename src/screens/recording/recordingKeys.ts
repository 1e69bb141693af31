/** What each key does while a survey is recorded: one hand is on the piano, the other on a lever or a mute. */

export type RecordingAction = 'back' | 'skip' | 'pause' | 'undo' | 'another-note' | 'finish';

/** `key` as KeyboardEvent.key gives it; `label` as it stands on the button. */
export const KEYS: Record<RecordingAction, { readonly key: string; readonly label: string }> = {
  back: { key: 'ArrowLeft', label: '←' },
  skip: { key: 'ArrowRight', label: '→' },
  pause: { key: 'p', label: 'P' },
  undo: { key: 'u', label: 'U' },
  'another-note': { key: 'n', label: 'N' },
  finish: { key: 'f', label: 'F' },
};

type KeyPress = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'repeat'>;

/** The action a key press asks for; none with a modifier, since those belong to the browser, nor while a key is held down. */
export function actionOfKey(press: KeyPress): RecordingAction | undefined {
  if (press.ctrlKey || press.metaKey || press.altKey || press.repeat) return undefined;
  const key = press.key.length === 1 ? press.key.toLowerCase() : press.key;
  const found = Object.entries(KEYS).find(([, wanted]) => wanted.key === key);
  return found?.[0] as RecordingAction | undefined;
}
