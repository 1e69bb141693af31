/** Work done, while it is being typed, and what the fields mean once all of them make sense. */
import { type Compass, isInCompass } from '../../piano/compass.ts';
import type { EventKind, InstrumentEvent } from '../../piano/instrument.ts';
import { nameToMidi } from '../../piano/note.ts';

export type EventDraft = {
  readonly happenedOn: string;
  readonly kind: EventKind;
  readonly from: string;
  readonly to: string;
  readonly remark: string;
};

export type EventFault =
  | 'date-missing'
  | 'from-not-a-note'
  | 'to-not-a-note'
  | 'note-outside'
  | 'range-reversed'
  | 'range-half';

export type EventFaults = Partial<Record<keyof EventDraft, EventFault>>;
export type ReadEvent =
  | { readonly isSound: true; readonly event: Omit<InstrumentEvent, 'id' | 'instrumentId'> }
  | { readonly isSound: false; readonly faults: EventFaults };

/** The event that the fields describe, or what is wrong with which field. Both notes empty: the whole instrument. */
export function readEvent(draft: EventDraft, compass: Compass): ReadEvent {
  const faults: EventFaults = {};
  if (!/^\d{4}-\d{2}-\d{2}$/.test(draft.happenedOn)) faults.happenedOn = 'date-missing';
  const fromMidi = readNote(draft.from);
  const toMidi = readNote(draft.to);
  if (fromMidi === undefined) faults.from = 'from-not-a-note';
  else if (fromMidi !== null && !isInCompass(compass, fromMidi)) faults.from = 'note-outside';
  if (toMidi === undefined) faults.to = 'to-not-a-note';
  else if (toMidi !== null && !isInCompass(compass, toMidi)) faults.to = 'note-outside';
  if (fromMidi === null && typeof toMidi === 'number') faults.from = 'range-half';
  if (toMidi === null && typeof fromMidi === 'number') faults.to = 'range-half';
  if (typeof fromMidi === 'number' && typeof toMidi === 'number' && toMidi < fromMidi) faults.to ??= 'range-reversed';
  if (Object.keys(faults).length > 0 || fromMidi === undefined || toMidi === undefined)
    return { isSound: false, faults };
  const { happenedOn, kind } = draft;
  return { isSound: true, event: { happenedOn, kind, fromMidi, toMidi, remark: draft.remark.trim() } };
}

/** Null for an empty field, undefined for what is no note. */
function readNote(text: string): number | null | undefined {
  return text.trim() === '' ? null : nameToMidi(text);
}
