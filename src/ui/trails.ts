/** The way from the workshop to a screen, a step for each level. */
import { formatDate } from '../piano/format.ts';
import type { Instrument, Visit } from '../piano/instrument.ts';
import type { TrailStep } from './PageHeading.tsx';
import { routeToHref } from './routes.ts';
import { texts } from './texts.ts';

export function workshopTrail(): TrailStep[] {
  return [{ label: texts.common.workshop, href: routeToHref({ screen: 'workshop' }) }];
}

export function instrumentTrail({ id, name }: Pick<Instrument, 'id' | 'name'>): TrailStep[] {
  return [...workshopTrail(), { label: name, href: routeToHref({ screen: 'instrument', instrumentId: id }) }];
}

export function visitTrail(
  instrument: Pick<Instrument, 'id' | 'name'>,
  { id, visitedOn }: Pick<Visit, 'id' | 'visitedOn'>,
): TrailStep[] {
  const label = texts.visit.title(formatDate(visitedOn));
  return [...instrumentTrail(instrument), { label, href: routeToHref({ screen: 'visit', visitId: id }) }];
}
