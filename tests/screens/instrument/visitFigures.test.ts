import { expect, it } from 'vitest';
import { visitFigures } from '../../../src/screens/instrument/visitFigures.ts';
import { autumn, spring, surveyOf } from './plainVisits.ts';

it('visitFigures counts notes by stage and tells no survey from an empty one', () => {
  const surveys = [surveyOf(spring, 'as-found', { 57: 0, 69: 0 }), surveyOf(autumn, 'as-left', {})];
  const [first, second] = visitFigures(
    [spring, autumn],
    surveys.map(({ survey }) => survey),
    surveys.flatMap(({ takes }) => takes),
  );
  expect([first?.asFound?.noteCount, first?.asLeft, second?.asLeft?.noteCount]).toEqual([2, null, 0]);
});
