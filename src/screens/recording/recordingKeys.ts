/** What each key does while a survey is recorded: one hand is on the piano, the other on a lever or a mute. */

export type RecordingAction = 'back' | 'skip' | 'pause' | 'undo' | 'another-note' | 'finish' | 'settings';

/** Each action's own letter. */
export const LETTERS: Record<RecordingAction, string> = {
  back: 'b',
  skip: 's',
  pause: 'p',
  undo: 'u',
  'another-note': 'n',
  finish: 'f',
  settings: 'k',
};

/** Keys that foot switches type, as KeyboardEvent.key gives them. */
export const FOOT_KEYS = [' ', 'Enter', 'PageUp', 'PageDown', 'ArrowLeft', 'ArrowRight'] as const;
export type FootKey = (typeof FOOT_KEYS)[number];

/** What a foot may do: nothing that ends the survey. */
export const FOOT_ACTIONS = ['none', 'back', 'skip', 'pause', 'undo'] as const;
export type FootAction = (typeof FOOT_ACTIONS)[number];
export type FootKeys = Readonly<Record<FootKey, FootAction>>;

export const USUAL_FOOT_KEYS: FootKeys = {
  ' ': 'none',
  Enter: 'none',
  PageUp: 'none',
  PageDown: 'none',
  ArrowLeft: 'back',
  ArrowRight: 'skip',
};

const SHORT_LABELS: Record<FootKey, string> = {
  ' ': '␣',
  Enter: '⏎',
  PageUp: 'PgUp',
  PageDown: 'PgDn',
  ArrowLeft: '←',
  ArrowRight: '→',
};

/** What stands on an action's button: the key that a foot or a hand finds first. */
export function keyLabel(action: RecordingAction, footKeys: FootKeys): string {
  const key = FOOT_KEYS.findLast((candidate) => footKeys[candidate] === action);
  return key ? SHORT_LABELS[key] : LETTERS[action].toUpperCase();
}

type KeyPress = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'repeat'>;

/** The action a key press asks for; none with a modifier, since those belong to the browser, nor while a key is held down. */
export function actionOfKey(press: KeyPress, footKeys: FootKeys): RecordingAction | undefined {
  if (press.ctrlKey || press.metaKey || press.altKey || press.repeat) return undefined;
  const footKey = FOOT_KEYS.find((candidate) => candidate === press.key);
  const footAction = footKey && footKeys[footKey];
  if (footAction) return footAction === 'none' ? undefined : footAction;
  const letter = press.key.toLowerCase();
  const found = Object.entries(LETTERS).find(([, wanted]) => wanted === letter);
  return found?.[0] as RecordingAction | undefined;
}
