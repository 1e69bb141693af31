/** Everything that the long record shows of an instrument. */
import type { BridgeTrial, TorqueReading } from '../piano/stringingRecords.ts';
import type { JudgedRecords } from './judgedRecords.ts';

export type FullRecords = JudgedRecords & {
  readonly torques: readonly TorqueReading[];
  readonly trials: readonly BridgeTrial[];
};
