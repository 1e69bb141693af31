import { useEffect, useState } from 'react';
import { type AwakeState, keepScreenAwake, thisPage } from '../capture/keepScreenAwake.ts';

/** Nobody touches the screen while both hands are at the piano: it must not go dark. Returns how that went. */
export function useAwakeScreen(isWanted: boolean): AwakeState {
  const [state, setState] = useState<AwakeState>('asking');
  useEffect(() => (isWanted ? keepScreenAwake(thisPage(), setState) : undefined), [isWanted]);
  return state;
}
