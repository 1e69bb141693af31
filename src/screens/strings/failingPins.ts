/** Pins that turn at less than their own string pulls: such a pin cannot hold, whatever the string sounds like. */
import type { Instrument, Visit } from '../../piano/instrument.ts';
import type { StringingSchedule, TorqueReading } from '../../piano/stringingRecords.ts';
import { USUAL_PIN_DIAMETER_MM } from '../../piano/tuningPin.ts';
import { type PinTorque, pinTorques } from '../../stability/torquePins.ts';
import { pinLoad } from '../../stringing/pinLoad.ts';
import { keyOf } from './stringKey.ts';

type PinRecords = {
  readonly instrument: Pick<Instrument, 'tuningPinDiameterMm'>;
  readonly visits: readonly Visit[];
  readonly torques: readonly TorqueReading[];
  readonly schedules: readonly StringingSchedule[];
};

/**
 * Keys of strings, from each pin's newest readings; none where the schedule of what is on the instrument does not say how hard its
 * string pulls.
 */
export function failingPins({ instrument, visits, torques, schedules }: PinRecords): ReadonlySet<string> {
  const schedule = schedules.find(({ kind }) => kind === 'as it is');
  if (!schedule) return new Set();
  const diameterMm = instrument.tuningPinDiameterMm ?? USUAL_PIN_DIAMETER_MM;
  const rows = new Map(schedule.rows.map((row) => [row.midi, row]));
  const failing = newestTorques(torques, visits).filter((pin) => {
    const load = pinLoad(rows.get(pin.midi), schedule.pitchStandardHz, diameterMm);
    return load.known && frictionNm(pin, load.stringTorqueNm) < load.stringTorqueNm;
  });
  return new Set(failing.map(keyOf));
}

/** The pin's own: read one way alone it has the string's pull in it or taken from it; where nobody noted the way it stands as it is. */
function frictionNm({ torqueNm, read }: PinTorque, stringTorqueNm: number): number {
  if (read === 'sharpwards') return torqueNm - stringTorqueNm;
  return read === 'flatwards' ? torqueNm + stringTorqueNm : torqueNm;
}

function newestTorques(torques: readonly TorqueReading[], visits: readonly Visit[]): PinTorque[] {
  const byPin = new Map<string, PinTorque>();
  for (const { id } of [...visits].sort((a, b) => a.visitedOn.localeCompare(b.visitedOn)))
    for (const pin of pinTorques(torques.filter(({ visitId }) => visitId === id))) byPin.set(keyOf(pin), pin);
  return [...byPin.values()];
}
