/** What begins suddenly: a strike, or a knock, which is gone again at once. */
import { createPeakPicker } from './peakPicker.ts';
import { createBandWatch, SHORT_FRAME_HOPS } from './soundBands.ts';

/** Hops before the end of the newest frame; undefined where nothing was found out with it. */
export type SuddenSounds = { readonly beganHopsAgo: number | undefined; readonly knockHopsAgo: number | undefined };

export type SuddenSoundWatch = {
  /** @param frame the SHORT_FRAME_HOPS hops up to now, hop after hop */
  hear(frame: Float32Array): SuddenSounds;
};

/**
 * A knock rose in many bands at once and has fallen far 64 ms later. A beat does neither; a strike stays; a very
 * short high note with a loud blow may pass for one, so a knock is only a reason to look twice.
 */
export function createSuddenSoundWatch(sampleRateHz: number): SuddenSoundWatch {
  const bands = createBandWatch(sampleRateHz);
  const picker = createPeakPicker(PEAK_REACH_HOPS, LEAST_RISE_DB);
  let peaks: { hopsAgo: number; riseDb: number }[] = [];
  return {
    hear(frame) {
      bands.watch(frame);
      for (const peak of peaks) peak.hopsAgo++;
      const riseDb = picker.peak(bands.suddenRiseDb());
      if (riseDb !== undefined) peaks.push({ hopsAgo: PEAK_REACH_HOPS, riseDb });
      const due = peaks.find((peak) => peak.hopsAgo === FALLEN_AFTER_HOPS);
      peaks = peaks.filter((peak) => peak.hopsAgo < FALLEN_AFTER_HOPS);
      return {
        beganHopsAgo: riseDb === undefined ? undefined : PEAK_REACH_HOPS + BEGAN_HOPS,
        knockHopsAgo: due && isOver(due.riseDb, bands.fallSinceDb(due.hopsAgo)) ? due.hopsAgo + BEGAN_HOPS : undefined,
      };
    },
  };
}

const isOver = (riseDb: number, fallDb: number) => riseDb >= LEAST_KNOCK_DB && fallDb >= LEAST_FALL_DB;

const PEAK_REACH_HOPS = 5;
/** The rise is largest when most of the frame lies after the beginning. */
const BEGAN_HOPS = SHORT_FRAME_HOPS - 1;
/** Low on purpose: a guess costs a millisecond, a strike that was never guessed is lost. */
const LEAST_RISE_DB = 10;
const FALLEN_AFTER_HOPS = 12;
/** Four bands at their largest, or more of them less: quieter knocks mislead nobody. */
const LEAST_KNOCK_DB = 40;
/** A knock of 40 ms for 60 dB falls by far more in 64 ms, a strike's tone by little. */
const LEAST_FALL_DB = 12;
