/** What can be changed about a photograph: its caption and what it belongs to. */
import { type Compass, isInCompass } from '../../piano/compass.ts';
import { formatNote } from '../../piano/format.ts';
import type { VisitId } from '../../piano/ids.ts';
import { nameToMidi } from '../../piano/note.ts';
import type { Photograph } from '../../piano/photograph.ts';
import type { StringPosition } from '../../piano/reading.ts';

export type PhotographDraft = {
  readonly caption: string;
  readonly visitId: string;
  readonly note: string;
  readonly string: '' | '0' | '1' | '2' | '3';
};

export function photographToDraft({ caption, visitId, midi, stringPosition }: Photograph): PhotographDraft {
  return {
    caption,
    visitId: visitId ?? '',
    note: midi === null ? '' : formatNote(midi),
    string: stringPosition === null ? '' : (`${stringPosition}` as const),
  };
}

export type DraftRead =
  | { readonly isSound: true; readonly photograph: Photograph }
  | { readonly isSound: false; readonly fault: 'not-a-note' };

export function readPhotographDraft(photograph: Photograph, draft: PhotographDraft, compass: Compass): DraftRead {
  const name = draft.note.trim();
  const midi = name === '' ? null : (nameToMidi(name) ?? -1);
  if (midi !== null && !isInCompass(compass, midi)) return { isSound: false, fault: 'not-a-note' };
  const stringPosition = midi === null || draft.string === '' ? null : (Number(draft.string) as StringPosition);
  const visitId = draft.visitId === '' ? null : (draft.visitId as VisitId);
  return { isSound: true, photograph: { ...photograph, caption: draft.caption.trim(), visitId, midi, stringPosition } };
}
