/** Which strings can be heard at more than one survey. */
import type { Survey, Take, Visit } from '../../piano/instrument.ts';
import type { StringPosition } from '../../piano/reading.ts';

export type HearableSound = { readonly take: Take; readonly survey: Survey; readonly visit: Visit };

export type HearableString = {
  /** Of this string among the others; for a choice. */
  readonly key: string;
  readonly midi: number;
  readonly stringPosition: StringPosition;
  /** Oldest first, at least two. */
  readonly sounds: readonly HearableSound[];
  /** Whether any of them beats, so that it is worth hearing. */
  readonly isBeating: boolean;
};

/** @param takes kept ones whose sound is stored; from the lowest string up */
export function hearableStrings(
  takes: readonly Take[],
  surveys: readonly Survey[],
  visits: readonly Visit[],
): HearableString[] {
  const surveyById = new Map(surveys.map((survey) => [survey.id, survey]));
  const visitById = new Map(visits.map((visit) => [visit.id, visit]));
  const byString = new Map<string, HearableSound[]>();
  for (const take of takes) {
    const survey = surveyById.get(take.surveyId);
    const visit = survey && visitById.get(survey.visitId);
    if (!survey || !visit) continue;
    const key = `${take.midi}/${take.stringPosition}`;
    byString.set(key, [...(byString.get(key) ?? []), { take, survey, visit }]);
  }
  return [...byString].flatMap(([key, sounds]) => hearableString(key, sounds)).sort(fromTheLowest);
}

function hearableString(key: string, sounds: readonly HearableSound[]): HearableString[] {
  const [first] = sounds;
  if (!first || sounds.length < 2) return [];
  const { midi, stringPosition } = first.take;
  const isBeating = sounds.some(({ take }) => take.reading.beating.rateHz !== null);
  return [{ key, midi, stringPosition, sounds: [...sounds].sort(inOrder), isBeating }];
}

function inOrder(a: HearableSound, b: HearableSound): number {
  const [one, other] = [`${a.visit.visitedOn} ${a.survey.startedAt}`, `${b.visit.visitedOn} ${b.survey.startedAt}`];
  return one < other ? -1 : 1;
}

function fromTheLowest(a: HearableString, b: HearableString): number {
  return a.midi - b.midi || a.stringPosition - b.stringPosition;
}
