import { expect, it } from 'vitest';
import { heldTakes, holdTake, releaseTake } from '../../src/listening/heldTakes.ts';
import type { InstrumentId, SurveyId, TakeId, VisitId } from '../../src/piano/ids.ts';
import type { Take } from '../../src/piano/instrument.ts';
import { readingAt } from '../screens/plainReading.ts';

const takeOf = (id: string, survey: string): Take => ({
  id: id as TakeId,
  surveyId: survey as SurveyId,
  visitId: 'v' as VisitId,
  instrumentId: 'i' as InstrumentId,
  midi: 60,
  stringPosition: 2,
  recordedAt: '2024-03-01T10:00:00Z',
  isKept: true,
  reading: readingAt(60, 0),
});

it('takes that could not be stored are held by survey, once each, until they are', () => {
  const [first, second, other] = [takeOf('a', 's1'), takeOf('b', 's1'), takeOf('c', 's2')];
  for (const take of [first, second, first, other]) holdTake(take);
  expect(heldTakes('s1' as SurveyId).map((take) => take.id)).toEqual(['b', 'a']);
  expect(releaseTake(second)).toEqual([first]);
  expect(releaseTake(first)).toEqual([]);
  expect(heldTakes('s2' as SurveyId)).toEqual([other]);
});
