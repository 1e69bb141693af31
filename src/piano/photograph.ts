/** A picture that belongs to an instrument, a visit or a string. The picture's bytes stand apart, so that a list need not read them. */
import type { InstrumentId, PhotographId, VisitId } from './ids.ts';
import type { StringPosition } from './reading.ts';

export type Photograph = {
  readonly id: PhotographId;
  readonly instrumentId: InstrumentId;
  /** Null where it belongs to the instrument and to no visit. */
  readonly visitId: VisitId | null;
  /** Null where it belongs to no one note. */
  readonly midi: number | null;
  readonly stringPosition: StringPosition | null;
  /** ISO 8601 date and time, by the camera where it said so. */
  readonly takenAt: string | null;
  readonly addedAt: string;
  readonly caption: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly mediaType: 'image/jpeg' | 'image/png' | 'image/webp';
};

export type PhotographFile = {
  readonly id: PhotographId;
  readonly instrumentId: InstrumentId;
  readonly bytes: Uint8Array<ArrayBuffer>;
};
