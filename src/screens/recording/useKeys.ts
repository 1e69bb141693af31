import { useEffect, useRef } from 'react';
import { actionOfKey, type FootKeys, type RecordingAction } from './recordingKeys.ts';

/**
 * Listens to the keys of the recording screen while no sheet lies over it and nothing is being typed. A key that has an action
 * here does not press the button in focus as well.
 */
export function useKeys(isOn: boolean, footKeys: FootKeys, act: (action: RecordingAction) => void): void {
  const latest = useRef(act);
  latest.current = act;
  useEffect(() => {
    if (!isOn) return;
    const actionOf = (event: KeyboardEvent) => {
      const isTyping = event.target instanceof HTMLElement && event.target.matches('input, textarea, select');
      return isTyping ? undefined : actionOfKey(event, footKeys);
    };
    const press = (event: KeyboardEvent) => {
      const action = actionOf(event);
      if (!action) return;
      event.preventDefault();
      latest.current(action);
    };
    /** Some browsers press a button when the space bar comes up again. */
    const release = (event: KeyboardEvent) => {
      if (event.key === ' ' && actionOf(event)) event.preventDefault();
    };
    window.addEventListener('keydown', press);
    window.addEventListener('keyup', release);
    return () => {
      window.removeEventListener('keydown', press);
      window.removeEventListener('keyup', release);
    };
  }, [isOn, footKeys]);
}
