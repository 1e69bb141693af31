import type { NoteState } from './noteState.ts';
import { type Sign, SquareSign } from './SquareSign.tsx';

const SIGNS: Record<NoteState, Sign> = { kept: 'tick', doubtful: 'half', skipped: 'strike', missing: 'empty' };

/** The sign of what a survey has of a note. */
export function StateMark({ state }: { readonly state: NoteState }) {
  return <SquareSign sign={SIGNS[state]} />;
}
