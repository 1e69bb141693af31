import { useEffect, useMemo, useState } from 'react';
import type { InstrumentId, TakeId } from '../../piano/ids.ts';
import type { Instrument, TakeSound } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import { type Observed, useObserved } from '../../ui/useObserved.ts';
import { sharedTakeWorker } from '../../workers/sharedTakeWorker.ts';
import { equalLoudness, type LeveledSound, type StruckSound } from './equalLoudness.ts';
import { type HearableSound, type HearableString, hearableStrings } from './hearableNotes.ts';

export type HearingPageData = { readonly instrument: Instrument; readonly strings: readonly HearableString[] };

export function useHearableStrings(records: Records, instrumentId: InstrumentId): Observed<HearingPageData | null> {
  return useObserved<HearingPageData | null>(`hear ${instrumentId}`, (onValue, onFault) =>
    records.observe(() => readHearable(records, instrumentId), onValue, onFault),
  );
}

async function readHearable(records: Records, instrumentId: InstrumentId): Promise<HearingPageData | null> {
  const instrument = await records.instrument(instrumentId);
  if (!instrument) return null;
  const [visits, surveys, takes, sizes] = await Promise.all([
    records.visitsOf(instrumentId),
    records.surveysOfInstrument(instrumentId),
    records.keptTakesOfInstrument(instrumentId),
    records.soundSizes(),
  ]);
  const stored = new Set<TakeId>(sizes.takeIds);
  const withSound = takes.filter(({ id }) => stored.has(id));
  return { instrument, strings: hearableStrings(withSound, surveys, visits) };
}

export type PairChoice = {
  readonly string: HearableString;
  readonly first: HearableSound;
  readonly second: HearableSound;
};

/** Which string, and which two of its sounds: the first one that beats, its oldest and its newest sound, unless chosen. */
export function usePairChoice(strings: readonly HearableString[]) {
  const [key, setKey] = useState<string | null>(null);
  const [takeIds, setTakeIds] = useState<readonly [TakeId | null, TakeId | null]>([null, null]);
  const string = strings.find((one) => one.key === key) ?? strings.find(({ isBeating }) => isBeating) ?? strings[0];
  const find = (id: TakeId | null) => string?.sounds.find(({ take }) => take.id === id);
  const first = find(takeIds[0]) ?? string?.sounds[0];
  const second = find(takeIds[1]) ?? string?.sounds.at(-1);
  const choice: PairChoice | null = string && first && second ? { string, first, second } : null;
  return {
    choice,
    chooseString: (chosen: string) => {
      setKey(chosen);
      setTakeIds([null, null]);
    },
    chooseFirst: (id: string) => setTakeIds([id as TakeId, second?.take.id ?? null]),
    chooseSecond: (id: string) => setTakeIds([first?.take.id ?? null, id as TakeId]),
  };
}

export type PreparedPair =
  | { readonly state: 'preparing' }
  | { readonly state: 'ready'; readonly sounds: readonly [LeveledSound, LeveledSound] }
  | { readonly state: 'silent' }
  | { readonly state: 'unreadable'; readonly reason: string };

const PREPARING: PreparedPair = { state: 'preparing' };

/** Reads, unpacks and levels the two sounds. */
export function usePreparedPair(records: Records, firstId: TakeId, secondId: TakeId): PreparedPair {
  const key = `${firstId} ${secondId}`;
  const [prepared, setPrepared] = useState<{ key: string; pair: PreparedPair }>({ key, pair: PREPARING });
  useEffect(() => {
    let isWanted = true;
    prepare(records, firstId, secondId)
      .catch((error: unknown): PreparedPair => {
        return { state: 'unreadable', reason: error instanceof Error ? error.message : String(error) };
      })
      .then((pair) => isWanted && setPrepared({ key: `${firstId} ${secondId}`, pair }));
    return () => {
      isWanted = false;
    };
  }, [records, firstId, secondId]);
  return useMemo(() => (prepared.key === key ? prepared.pair : PREPARING), [prepared, key]);
}

async function prepare(records: Records, firstId: TakeId, secondId: TakeId): Promise<PreparedPair> {
  const stored = [await records.sound(firstId), await records.sound(secondId)];
  const [one, other] = await Promise.all(stored.map(unpacked));
  const sounds = one && other && equalLoudness(one, other);
  return sounds ? { state: 'ready', sounds } : { state: 'silent' };
}

async function unpacked(sound: TakeSound | undefined): Promise<StruckSound> {
  if (!sound) throw new Error('it is not stored any more');
  const { samples, sampleRateHz } = await sharedTakeWorker().ask({ kind: 'decode', bytes: sound.bytes });
  return { samples, sampleRateHz, onsetIndex: sound.onsetIndex };
}
