import { useEffect, useState } from 'react';
import { openRecords, type Records } from '../records/records.ts';

export type RecordsState =
  /** Blocked: another page holds older records open, and this one waits. */
  | { readonly state: 'opening'; readonly isBlocked: boolean }
  | { readonly state: 'open'; readonly records: Records }
  /** Another page brought a newer version of the records. */
  | { readonly state: 'closed' }
  | { readonly state: 'unavailable'; readonly message: string };

/**
 * Opens the records of this device once, for as long as the page lives.
 * @param isBusy while true the records are not given up for a newer version in another page
 */
export function useRecords(isBusy: boolean): RecordsState {
  const [state, setState] = useState<RecordsState>({ state: 'opening', isBlocked: false });
  useEffect(() => {
    let isWanted = true;
    const tell = (next: RecordsState) => {
      if (isWanted) setState(next);
    };
    openRecords(undefined, { onBlocked: () => tell({ state: 'opening', isBlocked: true }) }).then(
      (records) => {
        if (!isWanted) return records.close();
        records.onClosed(() => tell({ state: 'closed' }));
        tell({ state: 'open', records });
      },
      (error: unknown) => tell({ state: 'unavailable', message: messageOf(error) }),
    );
    return () => {
      isWanted = false;
    };
  }, []);
  const records = state.state === 'open' ? state.records : null;
  useEffect(() => (isBusy ? records?.holdOpen() : undefined), [records, isBusy]);
  return state;
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
