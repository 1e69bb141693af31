/** What a photograph is called, and what stands below it. */
import { formatDate, formatNote } from '../../piano/format.ts';
import type { Visit } from '../../piano/instrument.ts';
import type { Photograph } from '../../piano/photograph.ts';
import { texts } from '../../ui/texts.ts';

const words = texts.photographs;

/** Its caption, or what it shows where nobody wrote one. */
export function photographTitle({ caption, midi }: Photograph): string {
  if (caption !== '') return caption;
  return midi === null ? words.untitled : `${words.untitled}, ${formatNote(midi)}`;
}

/** @example 'C5, left string · visit of 4 May 2021 · taken 4 May 2021' */
export function aboutPhotograph(photograph: Photograph, visits: readonly Visit[]): string {
  const { midi, stringPosition, visitId, takenAt, addedAt } = photograph;
  const visit = visits.find(({ id }) => id === visitId);
  const string = stringPosition ? `, ${texts.common.stringPosition[stringPosition]}` : '';
  const parts = [
    midi === null ? null : `${formatNote(midi)}${string}`,
    visit ? texts.visit.title(formatDate(visit.visitedOn)) : null,
    takenAt === null ? words.addedOn(formatDate(addedAt)) : words.takenOn(formatDate(takenAt)),
  ];
  return parts.filter((part) => part !== null).join(' · ');
}
