/** What a survey holds of every note of the compass. */
import { type Compass, notesOf } from '../piano/compass.ts';
import type { Take } from '../piano/instrument.ts';
import type { NoteCell, NoteState } from './noteState.ts';

/**
 * A kept take without a fault makes its note kept, one with a fault doubtful; where several strings of a note are taken, the
 * worst counts. A note of which there are only faulty takes, all set aside, is doubtful too.
 */
export function surveyCells(compass: Compass, takes: readonly Take[], skippedMidi: readonly number[] = []): NoteCell[] {
  return notesOf(compass).map((midi) => {
    const own = takes.filter((take) => take.midi === midi);
    return { midi, state: stateOf(own) ?? (skippedMidi.includes(midi) ? 'skipped' : 'missing') };
  });
}

function stateOf(takes: readonly Take[]): NoteState | undefined {
  const kept = takes.filter((take) => take.isKept);
  if (kept.length > 0) return kept.every(isUsable) ? 'kept' : 'doubtful';
  return takes.some((take) => !isUsable(take)) ? 'doubtful' : undefined;
}

function isUsable(take: Take): boolean {
  return take.reading.quality.isUsable;
}
