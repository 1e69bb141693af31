/**
 * The addresses of the screens. They live behind the `#`, so that the page works from any folder and from a file cache, and
 * so that a link can be sent, bookmarked and gone back from.
 */
import type { InstrumentId, SurveyId, TakeId, VisitId } from '../piano/ids.ts';
import type { StringPosition } from '../piano/reading.ts';

export type Route =
  | { readonly screen: 'workshop' }
  | { readonly screen: 'new-instrument' }
  | { readonly screen: 'instrument'; readonly instrumentId: InstrumentId }
  | { readonly screen: 'edit-instrument'; readonly instrumentId: InstrumentId }
  | { readonly screen: 'new-visit'; readonly instrumentId: InstrumentId }
  | { readonly screen: 'stability'; readonly instrumentId: InstrumentId }
  | { readonly screen: 'owners-page'; readonly instrumentId: InstrumentId }
  | { readonly screen: 'hearing'; readonly instrumentId: InstrumentId }
  | { readonly screen: 'long-record'; readonly instrumentId: InstrumentId }
  | { readonly screen: 'visit'; readonly visitId: VisitId }
  | { readonly screen: 'edit-visit'; readonly visitId: VisitId }
  | { readonly screen: 'visit-torque'; readonly visitId: VisitId }
  | { readonly screen: 'instrument-torque'; readonly instrumentId: InstrumentId }
  | { readonly screen: 'strings'; readonly instrumentId: InstrumentId }
  | {
      readonly screen: 'string';
      readonly instrumentId: InstrumentId;
      readonly midi: number;
      readonly stringPosition: StringPosition;
    }
  | { readonly screen: 'work-list'; readonly instrumentId: InstrumentId }
  | { readonly screen: 'stringing'; readonly instrumentId: InstrumentId }
  | { readonly screen: 'held' }
  | { readonly screen: 'survey'; readonly surveyId: SurveyId }
  | { readonly screen: 'recording'; readonly surveyId: SurveyId }
  | { readonly screen: 'take'; readonly takeId: TakeId }
  | { readonly screen: 'method' }
  | { readonly screen: 'microphone-clock' }
  | { readonly screen: 'records' }
  | {
      readonly screen: 'photographs';
      readonly instrumentId: InstrumentId;
      /** Of this visit alone, or of this note. */
      readonly visitId?: VisitId;
      readonly midi?: number;
    }
  | { readonly screen: 'unknown'; readonly path: string };

/** @example routeToHref({ screen: 'workshop' }) // '#/' */
export function routeToHref(route: Route): string {
  switch (route.screen) {
    case 'workshop':
      return '#/';
    case 'new-instrument':
      return '#/instruments/new';
    case 'instrument':
      return `#/instruments/${encodeURIComponent(route.instrumentId)}`;
    case 'edit-instrument':
      return `#/instruments/${encodeURIComponent(route.instrumentId)}/edit`;
    case 'owners-page':
      return `#/instruments/${encodeURIComponent(route.instrumentId)}/owners-page`;
    case 'stability':
      return `#/instruments/${encodeURIComponent(route.instrumentId)}/stability`;
    case 'hearing':
      return `#/instruments/${encodeURIComponent(route.instrumentId)}/hear`;
    case 'long-record':
      return `#/instruments/${encodeURIComponent(route.instrumentId)}/record`;
    case 'new-visit':
      return `#/instruments/${encodeURIComponent(route.instrumentId)}/visits/new`;
    case 'visit':
      return `#/visits/${encodeURIComponent(route.visitId)}`;
    case 'edit-visit':
      return `#/visits/${encodeURIComponent(route.visitId)}/edit`;
    case 'visit-torque':
      return `#/visits/${encodeURIComponent(route.visitId)}/torque`;
    case 'instrument-torque':
      return `#/instruments/${encodeURIComponent(route.instrumentId)}/torque`;
    case 'strings':
      return `#/instruments/${encodeURIComponent(route.instrumentId)}/strings`;
    case 'string':
      return `#/instruments/${encodeURIComponent(route.instrumentId)}/strings/${route.midi}/${route.stringPosition}`;
    case 'work-list':
      return `#/instruments/${encodeURIComponent(route.instrumentId)}/work-list`;
    case 'stringing':
      return `#/instruments/${encodeURIComponent(route.instrumentId)}/stringing`;
    case 'held':
      return '#/held';
    case 'survey':
      return `#/surveys/${encodeURIComponent(route.surveyId)}`;
    case 'recording':
      return `#/surveys/${encodeURIComponent(route.surveyId)}/record`;
    case 'take':
      return `#/takes/${encodeURIComponent(route.takeId)}`;
    case 'method':
      return '#/how-it-measures';
    case 'microphone-clock':
      return '#/microphone-clock';
    case 'photographs':
      return photographsHref(route);
    case 'records':
      return '#/records';
    case 'unknown':
      return `#${route.path}`;
  }
}

/** Reads the part of an address from the `#` on. What is no screen of ours comes back as `unknown`, never as an error. */
export function hrefToRoute(hash: string): Route {
  const path = hash.replace(/^#/, '');
  const parts = path.split('/').filter((part) => part !== '');
  const [place, id, below, last, leaf] = parts.map(decodePart);
  if (parts.length === 0) return { screen: 'workshop' };
  if (place === 'microphone-clock' && id === undefined) return { screen: 'microphone-clock' };
  if (place === 'how-it-measures' && id === undefined) return { screen: 'method' };
  if (place === 'records' && id === undefined) return { screen: 'records' };
  if (place === 'held' && id === undefined) return { screen: 'held' };
  if (place === 'instruments' && id !== undefined)
    return instrumentRoute(id, below, last, leaf) ?? { screen: 'unknown', path };
  if (place === 'visits' && id !== undefined && last === undefined) {
    if (below === undefined) return { screen: 'visit', visitId: id as VisitId };
    if (below === 'edit') return { screen: 'edit-visit', visitId: id as VisitId };
    if (below === 'torque') return { screen: 'visit-torque', visitId: id as VisitId };
  }
  if (place === 'surveys' && id !== undefined && last === undefined) {
    if (below === undefined) return { screen: 'survey', surveyId: id as SurveyId };
    if (below === 'record') return { screen: 'recording', surveyId: id as SurveyId };
  }
  if (place === 'takes' && id !== undefined && below === undefined) return { screen: 'take', takeId: id as TakeId };
  return { screen: 'unknown', path };
}

type PhotographsRoute = Extract<Route, { screen: 'photographs' }>;

function photographsHref({ instrumentId, visitId, midi }: PhotographsRoute): string {
  const all = `#/instruments/${encodeURIComponent(instrumentId)}/photographs`;
  if (visitId !== undefined) return `${all}/visit/${encodeURIComponent(visitId)}`;
  return midi === undefined ? all : `${all}/note/${midi}`;
}

function photographsRoute(
  instrumentId: InstrumentId,
  kind: string | undefined,
  of: string | undefined,
): Route | undefined {
  const all = { screen: 'photographs' as const, instrumentId };
  if (kind === undefined) return all;
  if (kind === 'visit' && of !== undefined) return { ...all, visitId: of as VisitId };
  if (kind === 'note' && of !== undefined && /^\d{1,3}$/.test(of)) return { ...all, midi: Number(of) };
  return undefined;
}

function instrumentRoute(
  id: string,
  below: string | undefined,
  last: string | undefined,
  leaf: string | undefined,
): Route | undefined {
  const instrumentId = id as InstrumentId;
  if (id === 'new') return below === undefined ? { screen: 'new-instrument' } : undefined;
  if (below === undefined) return { screen: 'instrument', instrumentId };
  if (below === 'edit' && last === undefined) return { screen: 'edit-instrument', instrumentId };
  if (below === 'stability' && last === undefined) return { screen: 'stability', instrumentId };
  if (below === 'torque' && last === undefined) return { screen: 'instrument-torque', instrumentId };
  if (below === 'stringing' && last === undefined) return { screen: 'stringing', instrumentId };
  if (below === 'owners-page' && last === undefined) return { screen: 'owners-page', instrumentId };
  if (below === 'photographs') return photographsRoute(instrumentId, last, leaf);
  if (below === 'strings') return stringsRoute(instrumentId, last, leaf);
  if (below === 'work-list' && last === undefined) return { screen: 'work-list', instrumentId };
  if (below === 'record' && last === undefined) return { screen: 'long-record', instrumentId };
  if (below === 'hear' && last === undefined) return { screen: 'hearing', instrumentId };
  if (below === 'visits' && last === 'new') return { screen: 'new-visit', instrumentId };
  return undefined;
}

const POSITIONS: readonly StringPosition[] = [1, 2, 3];

function stringsRoute(
  instrumentId: InstrumentId,
  note: string | undefined,
  place: string | undefined,
): Route | undefined {
  if (note === undefined) return { screen: 'strings', instrumentId };
  const stringPosition = POSITIONS.find((position) => String(position) === place);
  if (stringPosition === undefined || !/^\d{1,3}$/.test(note)) return undefined;
  return { screen: 'string', instrumentId, midi: Number(note), stringPosition };
}

/** A broken percent escape in a pasted link is read as it stands. */
function decodePart(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

/** Opens a screen as a link does: the browser's back button returns. */
export function goTo(route: Route): void {
  window.location.hash = routeToHref(route);
}

/** Opens a screen in place of the present one, so that going back does not return to a form that has been saved. */
export function replaceWith(route: Route): void {
  window.location.replace(routeToHref(route));
}
