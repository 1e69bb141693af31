/** What a round over the block asks for, as it is set at the desk. */
import { notesOf } from '../../piano/compass.ts';
import type { Instrument } from '../../piano/instrument.ts';
import type { TorqueReading } from '../../piano/stringingRecords.ts';
import { sectionsOf } from '../../piano/surveyScope.ts';
import type { TorqueUnit } from '../../piano/torque.ts';
import { type NamedNotes, namedNotes } from './namedNotes.ts';
import type { PinChoice } from './pinRound.ts';

/** All notes, the section of this number, or notes that are named. */
export type NotesChoice = 'all' | 'named' | `section ${number}`;

export type DeskSettings = {
  readonly unit: TorqueUnit;
  readonly pins: PinChoice;
  readonly direction: TorqueReading['direction'];
  readonly notes: NotesChoice;
  readonly named: string;
};

/** The notes of the round, from the lowest up, or what is wrong with the ones that were named. */
export function notesOfRound(instrument: Instrument, { notes, named }: DeskSettings): NamedNotes {
  if (notes === 'named') return namedNotes(named, instrument.compass);
  const all = notesOf(instrument.compass);
  const section = notes === 'all' ? undefined : sectionsOf(instrument)[Number(notes.slice('section '.length))];
  if (!section) return { ok: true, midis: all };
  return { ok: true, midis: all.filter((midi) => midi >= section.fromMidi && midi <= section.toMidi) };
}
