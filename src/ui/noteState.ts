/** What a survey has of one note: nothing yet, a good take, a take with a fault, or the word that it was passed over. */
export type NoteState = 'missing' | 'kept' | 'doubtful' | 'skipped';

export type NoteCell = { readonly midi: number; readonly state: NoteState };

export function countState(cells: readonly NoteCell[], state: NoteState): number {
  return cells.filter((cell) => cell.state === state).length;
}
