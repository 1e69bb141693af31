/** A string's pin with what its history says of it. */
import type { StringPosition } from '../../piano/reading.ts';
import type { Slip } from './slipPosterior.ts';

export type JudgedPin = {
  readonly midi: number;
  readonly stringPosition: StringPosition;
  readonly slip: Slip;
  readonly isFlagged: boolean;
};
