import { describe, expect, it } from 'vitest';
import type { InstrumentId, SurveyId, TakeId, VisitId } from '../../src/piano/ids.ts';
import { hrefToRoute, type Route, routeToHref } from '../../src/ui/routes.ts';

const instrumentId = 'i 1/ä' as InstrumentId;
const visitId = 'v1' as VisitId;
const surveyId = 's1' as SurveyId;
const takeId = 't1' as TakeId;

const EVERY_SCREEN: Route[] = [
  { screen: 'workshop' },
  { screen: 'new-instrument' },
  { screen: 'instrument', instrumentId },
  { screen: 'edit-instrument', instrumentId },
  { screen: 'new-visit', instrumentId },
  { screen: 'stability', instrumentId },
  { screen: 'owners-page', instrumentId },
  { screen: 'long-record', instrumentId },
  { screen: 'hearing', instrumentId },
  { screen: 'visit', visitId },
  { screen: 'edit-visit', visitId },
  { screen: 'visit-torque', visitId },
  { screen: 'held' },
  { screen: 'instrument-torque', instrumentId },
  { screen: 'survey', surveyId },
  { screen: 'recording', surveyId },
  { screen: 'take', takeId },
  { screen: 'method' },
  { screen: 'microphone-clock' },
  { screen: 'records' },
  { screen: 'photographs', instrumentId },
  { screen: 'photographs', instrumentId, visitId },
  { screen: 'photographs', instrumentId, midi: 60 },
];

describe('addresses', () => {
  it.each(EVERY_SCREEN)('lead back to the screen $screen', (route) => {
    expect(hrefToRoute(routeToHref(route))).toEqual(route);
  });

  it('are different for every screen', () => {
    expect(new Set(EVERY_SCREEN.map(routeToHref)).size).toBe(EVERY_SCREEN.length);
  });

  it.each(['', '#', '#/'])('open the workshop for %j', (hash) => {
    expect(hrefToRoute(hash)).toEqual({ screen: 'workshop' });
  });

  it.each([
    '#/instruments',
    '#/instruments/new/edit',
    '#/instruments/i1/visits',
    '#/instruments/i1/edit/more',
    '#/visits/v1/x',
    '#/visits/v1/edit/more',
    '#/takes/t1/edit',
    '#/microphone-clock/x',
    '#/elsewhere',
  ])('that lead nowhere are said to be unknown: %s', (hash) => {
    expect(hrefToRoute(hash)).toEqual({ screen: 'unknown', path: hash.slice(1) });
  });

  it('with a broken escape are read as they stand', () => {
    expect(hrefToRoute('#/takes/50%')).toEqual({ screen: 'take', takeId: '50%' });
    expect(hrefToRoute('#/takes/%E4')).toEqual({ screen: 'take', takeId: '%E4' });
    expect(hrefToRoute('#/takes/%zz')).toEqual({ screen: 'take', takeId: '%zz' });
  });
});
