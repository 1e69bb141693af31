/** Which part of a take's sound is kept. */
import type { Take, TakeSound } from '../piano/instrument.ts';
import { storageRoom } from '../records/storageRoom.ts';
import type { StorageStatus } from '../records/storageStatus.ts';
import type { SoundKept } from '../ui/soundKept.ts';
import type { TakeMessage } from '../workers/listeningMessages.ts';

/** After the strike. Beyond it the partials' pitch gains little; how long a low note lives needs all of it. */
const FIRST_SECONDS_S = 4;

export type SoundToKeep = {
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sound: Omit<TakeSound, 'bytes' | 'encoding'>;
};

/** Null where none is to be kept. */
export function soundToKeep(
  { id, surveyId, instrumentId }: Take,
  told: Pick<TakeMessage, 'samples' | 'sampleRateHz' | 'startS' | 'onsetS'>,
  kept: SoundKept,
): SoundToKeep | null {
  if (kept === 'none') return null;
  const { sampleRateHz, startS, onsetS } = told;
  const onsetIndex = Math.round((onsetS - startS) * sampleRateHz);
  const end = onsetIndex + FIRST_SECONDS_S * sampleRateHz;
  const samples = kept === 'whole' ? told.samples : told.samples.slice(0, end);
  return {
    samples,
    sound: {
      id,
      surveyId,
      instrumentId,
      sampleRateHz,
      onsetIndex,
      startS,
      durationS: samples.length / sampleRateHz,
      takeDurationS: told.samples.length / sampleRateHz,
    },
  };
}

/** Where the browser does not say, there is. */
export function hasRoomForSound(status: StorageStatus): boolean {
  return storageRoom(status) !== 'figures-only';
}
