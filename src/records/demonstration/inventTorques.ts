/** Torques of invented pins, read with an invented wrench at some of the visits. */
import { notesOf } from '../../piano/compass.ts';
import type { TorqueId } from '../../piano/ids.ts';
import type { Instrument, Visit } from '../../piano/instrument.ts';
import type { TorqueReading } from '../../piano/stringingRecords.ts';
import type { InstrumentPlan, TorqueRound } from './plans.ts';
import type { SeededNumbers } from './seededNumbers.ts';

/** One pin a note, the centre string's, as the felt strip lets it sound. */
export function inventTorques(
  plan: InstrumentPlan,
  instrument: Instrument,
  visits: readonly Visit[],
  numbers: SeededNumbers,
): TorqueReading[] {
  return plan.torqueRounds.flatMap((round) => {
    const visit = visits.at(round.visitIndex);
    if (!visit) throw new RangeError(`visitIndex must name a visit, got ${round.visitIndex}`);
    return notesOf(instrument.compass).map((midi) => ({
      id: numbers.id<TorqueId>(),
      instrumentId: instrument.id,
      visitId: visit.id,
      midi,
      stringPosition: 2,
      torqueNm: readByWrench(round.usualNm * pinShare(plan, round, midi, numbers)),
      direction: 'not noted',
      remark: '',
    }));
  });
}

/** What a wrench can show: a tenth of a newton metre, and not less than half a one. */
function readByWrench(torqueNm: number): number {
  return Math.max(0.5, Math.round(10 * torqueNm) / 10);
}

/** Pins differ by a tenth or so, and those at the left end of a block are a little looser. Chosen. */
const PIN_SCATTER = 0.1;
const LEFT_END_LOSS = 0.12;

function pinShare(plan: InstrumentPlan, round: TorqueRound, midi: number, numbers: SeededNumbers): number {
  const { lowestMidi, highestMidi } = plan.instrument.compass;
  const alongBlock = (midi - lowestMidi) / (highestMidi - lowestMidi);
  const share = 1 - LEFT_END_LOSS * (1 - alongBlock) + numbers.normal(PIN_SCATTER);
  return Math.max(0.1, share) * (1 - round.zoneLoss * depthInZone(plan, midi));
}

/** 1 in the middle of the failing zone, half of that at its ends, a little in the notes beside it. */
function depthInZone({ zone }: InstrumentPlan, midi: number): number {
  if (!zone) return 0;
  const middle = (zone.fromMidi + zone.toMidi) / 2;
  const distance = Math.abs(midi - middle) / ((zone.toMidi - zone.fromMidi + 1) / 2);
  return distance <= 1 ? 1 - 0.5 * distance ** 2 : Math.max(0, 0.3 * (2 - distance) - 0.15);
}
