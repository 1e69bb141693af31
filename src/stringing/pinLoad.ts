/** How hard each string pulls at its own tuning pin, from the schedule of what is on the instrument. */
import { midiToHz } from '../piano/note.ts';
import type { ScheduleRow } from '../piano/stringingRecords.ts';
import { loadAtPitch, loadOfMass, stringTorqueNm } from './stringLoad.ts';
import { massPerLength } from './woundString.ts';

export type PinLoadUnknown =
  /** The schedule has no row of this note, or there is no schedule. */
  | 'no-row'
  | 'length-unknown'
  | 'diameter-unknown'
  /** Wound, and core or wrap is not said. */
  | 'winding-unknown'
  /** A core that is not thinner than the whole. */
  | 'diameters-contradict';

export type PinLoad =
  | {
      readonly known: true;
      readonly tensionN: number;
      readonly stringTorqueNm: number;
      /** A length or diameter that this rests on was interpolated, not measured. */
      readonly isInterpolated: boolean;
    }
  | { readonly known: false; readonly reason: PinLoadUnknown };

/**
 * Torque of a string on its pin: tension times half of pin and wire diameter together. A wound string winds its bare core on the
 * pin, so the core counts. The tension is that of the speaking length at the note's pitch in equal temperament; friction at agraffe or
 * capo lets the stretch before the pin differ from it, by a tenth or more just after tuning.
 * Source: mechanics, see `stringLoad.ts` and `woundString.ts`.
 */
export function pinLoad(row: ScheduleRow | undefined, pitchStandardHz: number, pinDiameterMm: number): PinLoad {
  if (!row) return { known: false, reason: 'no-row' };
  const { speakingLengthMm, wireDiameterMm } = row;
  if (speakingLengthMm === null) return { known: false, reason: 'length-unknown' };
  if (wireDiameterMm === null) return { known: false, reason: 'diameter-unknown' };
  const onPin = wireOnPin(row, wireDiameterMm);
  if (typeof onPin === 'string') return { known: false, reason: onPin };
  const frequencyHz = midiToHz(row.midi, pitchStandardHz);
  const { tensionN } =
    onPin.massPerLengthKgPerM === null
      ? loadAtPitch({ diameterMm: wireDiameterMm, speakingLengthMm }, frequencyHz)
      : loadOfMass({ ...onPin, massPerLengthKgPerM: onPin.massPerLengthKgPerM, speakingLengthMm }, frequencyHz);
  return {
    known: true,
    tensionN,
    stringTorqueNm: stringTorqueNm({ tensionN, pinDiameterMm, wireDiameterMm: onPin.coreDiameterMm }),
    isInterpolated: RESTS_ON.some((field) => row.interpolated.includes(field)),
  };
}

const RESTS_ON = ['speakingLengthMm', 'wireDiameterMm', 'coreDiameterMm'];

type OnPin = { readonly coreDiameterMm: number; readonly massPerLengthKgPerM: number | null };

function wireOnPin({ coreDiameterMm, wrap }: ScheduleRow, wireDiameterMm: number): OnPin | PinLoadUnknown {
  if (coreDiameterMm === null && wrap === null) return { coreDiameterMm: wireDiameterMm, massPerLengthKgPerM: null };
  if (coreDiameterMm === null || wrap === null) return 'winding-unknown';
  if (coreDiameterMm >= wireDiameterMm) return 'diameters-contradict';
  const massPerLengthKgPerM = massPerLength({ coreDiameterMm, overallDiameterMm: wireDiameterMm, wrap });
  return { coreDiameterMm, massPerLengthKgPerM };
}
