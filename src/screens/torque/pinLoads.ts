/** How hard each string pulls at its pin, from the records. */
import type { Instrument } from '../../piano/instrument.ts';
import type { StringingSchedule } from '../../piano/stringingRecords.ts';
import { USUAL_PIN_DIAMETER_MM } from '../../piano/tuningPin.ts';
import { type PinLoad, pinLoad } from '../../stringing/pinLoad.ts';

export type PinLoads = {
  readonly hasSchedule: boolean;
  readonly pinDiameterMm: number;
  readonly isDiameterMeasured: boolean;
  readonly of: (midi: number) => PinLoad;
};

/** A plan says nothing of what is on the instrument now. */
export function presentSchedule(schedules: readonly StringingSchedule[]): StringingSchedule | null {
  return schedules.find(({ kind }) => kind === 'as it is') ?? null;
}

export function pinLoads(
  instrument: Pick<Instrument, 'tuningPinDiameterMm'>,
  schedule: StringingSchedule | null,
): PinLoads {
  const measured = instrument.tuningPinDiameterMm;
  const pinDiameterMm = measured ?? USUAL_PIN_DIAMETER_MM;
  const rows = new Map(schedule?.rows.map((row) => [row.midi, row]));
  const pitchHz = schedule?.pitchStandardHz ?? 440; // without a schedule there is no row to use it with
  return {
    hasSchedule: schedule !== null,
    pinDiameterMm,
    isDiameterMeasured: measured !== undefined,
    of: (midi) => pinLoad(rows.get(midi), pitchHz, pinDiameterMm),
  };
}

/** Torque as a multiple of the string's pull; null where that is not known. */
export function pullMultiple(torqueNm: number, load: PinLoad): number | null {
  return load.known ? torqueNm / load.stringTorqueNm : null;
}
