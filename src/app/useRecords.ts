import { useEffect, useState } from 'react';
import { openRecords, type Records } from '../records/records.ts';

export type RecordsState =
  | { readonly state: 'opening' }
  | { readonly state: 'open'; readonly records: Records }
  | { readonly state: 'unavailable'; readonly message: string };

/** Opens the records of this device once, for as long as the page lives. */
export function useRecords(): RecordsState {
  const [state, setState] = useState<RecordsState>({ state: 'opening' });
  useEffect(() => {
    let isWanted = true;
    openRecords().then(
      (records) => (isWanted ? setState({ state: 'open', records }) : records.close()),
      (error: unknown) => isWanted && setState({ state: 'unavailable', message: messageOf(error) }),
    );
    return () => {
      isWanted = false;
    };
  }, []);
  return state;
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
