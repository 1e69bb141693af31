/** New ids, made where the thing is made: random UUIDs of version 4 (RFC 9562, section 5.4). */
import type {
  CalibrationId,
  DecisionId,
  EventId,
  InstrumentId,
  PhotographId,
  ScheduleId,
  SurveyId,
  TakeId,
  TorqueId,
  TrialId,
  VisitId,
  WireGradeId,
} from '../piano/ids.ts';

export type AnyId =
  | InstrumentId
  | EventId
  | VisitId
  | SurveyId
  | TakeId
  | CalibrationId
  | TorqueId
  | ScheduleId
  | WireGradeId
  | DecisionId
  | TrialId
  | PhotographId;

/**
 * A fresh id of the kind the caller names: `newId<TakeId>()`.
 * Pages that were not loaded over a secure connection have no `crypto.randomUUID`; `crypto.getRandomValues` is everywhere.
 */
export function newId<Name extends AnyId>(source: Pick<Crypto, 'getRandomValues'> & Partial<Crypto> = crypto): Name {
  if (source.randomUUID) return source.randomUUID() as string as Name;
  return uuidFromBytes(source.getRandomValues(new Uint8Array(16))) as Name;
}

/** Sixteen bytes as a version 4 UUID: the version and variant bits are set, the other 122 are the caller's. */
export function uuidFromBytes(bytes: Uint8Array): string {
  if (bytes.length !== 16) throw new RangeError(`bytes must be 16 long, got ${bytes.length}`);
  const marked = bytes.map((byte, index) => {
    if (index === 6) return (byte & 0x0f) | 0x40;
    if (index === 8) return (byte & 0x3f) | 0x80;
    return byte;
  });
  const hex = Array.from(marked, (byte) => byte.toString(16).padStart(2, '0')).join('');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
}
