import { useEffect, useRef } from 'react';
import { actionOfKey, type RecordingAction } from './recordingKeys.ts';

/** Listens to the keys of the recording screen while no sheet lies over it and nothing is being typed. */
export function useKeys(isOn: boolean, act: (action: RecordingAction) => void): void {
  const latest = useRef(act);
  latest.current = act;
  useEffect(() => {
    if (!isOn) return;
    const press = (event: KeyboardEvent) => {
      const isTyping = event.target instanceof HTMLElement && event.target.matches('input, textarea, select');
      const action = isTyping ? undefined : actionOfKey(event);
      if (!action) return;
      event.preventDefault();
      latest.current(action);
    };
    window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  }, [isOn]);
}
