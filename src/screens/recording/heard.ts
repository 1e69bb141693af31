/** What was just heard, and what became of it, in words. */
import { formatCents, formatNote } from '../../piano/format.ts';
import type { TakeId } from '../../piano/ids.ts';
import type { NoNoteReason, TakeFault } from '../../piano/reading.ts';
import type { NoteState } from '../../ui/noteState.ts';
import { texts } from '../../ui/texts.ts';

/** What became of the take: a take counts as kept only once the records have confirmed the write. */
export type Storing = 'storing' | 'kept' | 'set-aside' | 'not-stored' | 'nothing-to-store';

export type Heard = {
  readonly takeId: TakeId | null;
  /** Null where no note was found. */
  readonly midi: number | null;
  readonly offsetCents: number | null;
  readonly standardUncertaintyCents: number | null;
  readonly isUsable: boolean;
  readonly faults: readonly TakeFault[];
  readonly noNote: NoNoteReason | null;
  readonly storing: Storing;
};

export type HeardQuality = { readonly state: NoteState | 'pending'; readonly text: string };

/** The line under the figures. */
export function heardQuality(heard: Heard): HeardQuality {
  const words = texts.recording;
  if (heard.noNote) return { state: 'missing', text: texts.take.noNote[heard.noNote] };
  const why = heard.faults.map((fault) => texts.take.faults[fault]).join(', ');
  switch (heard.storing) {
    case 'storing':
      return { state: 'pending', text: words.writing };
    case 'not-stored':
      return { state: 'missing', text: words.notKept };
    case 'set-aside':
      return heard.isUsable
        ? { state: 'missing', text: words.asideKept }
        : { state: 'doubtful', text: `${words.keptDoubtful}: ${why}` };
    case 'kept':
    case 'nothing-to-store':
      return heard.isUsable
        ? { state: 'kept', text: words.kept }
        : { state: 'doubtful', text: `${words.keptDoubtful}: ${why}` };
  }
}

/** What a screen reader says of it, once it is settled. */
export function heardSentence(heard: Heard): string {
  const quality = heardQuality(heard);
  if (quality.state === 'pending') return '';
  if (heard.midi === null) return quality.text;
  const cents = formatCents(heard.offsetCents, heard.standardUncertaintyCents);
  return `${formatNote(heard.midi)}, ${cents}, ${quality.text}`;
}
