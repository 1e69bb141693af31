import { useEffect, useState } from 'react';
import type { StruckSamples } from '../../analysis/signal/partialEnvelope.ts';
import type { TakeId } from '../../piano/ids.ts';
import type { TakeSound } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import { type Observed, useObserved } from '../../ui/useObserved.ts';
import { unpackSound } from '../../workers/unpackSound.ts';

/** Null: none was kept. */
export function useStoredSound(records: Records, takeId: TakeId): Observed<TakeSound | null> {
  return useObserved<TakeSound | null>(`sound ${takeId}`, (onValue, onFault) =>
    records.observe(async () => (await records.sound(takeId)) ?? null, onValue, onFault),
  );
}

export type UnpackedSound =
  | { readonly state: 'preparing' }
  | { readonly state: 'ready'; readonly sound: StruckSamples }
  | { readonly state: 'failed'; readonly detail: string };

export function useUnpackedSound(stored: TakeSound): UnpackedSound {
  const [unpacked, setUnpacked] = useState<{ id: TakeId; result: UnpackedSound } | null>(null);
  useEffect(() => {
    let isWanted = true;
    const told = (result: UnpackedSound) => isWanted && setUnpacked({ id: stored.id, result });
    unpackSound(stored.bytes).then(
      ({ samples, sampleRateHz }) =>
        told({ state: 'ready', sound: { samples, sampleRateHz, onsetIndex: stored.onsetIndex } }),
      (error: unknown) => told({ state: 'failed', detail: error instanceof Error ? error.message : String(error) }),
    );
    return () => {
      isWanted = false;
    };
  }, [stored]);
  return unpacked?.id === stored.id ? unpacked.result : { state: 'preparing' };
}
