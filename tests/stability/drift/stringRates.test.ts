import { inverse, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import type { OwnHistory } from '../../../src/stability/drift/ownChanges.ts';
import { fitRate, stringRate } from '../../../src/stability/drift/stringRates.ts';
import { seededRandom } from '../../support/seededRandom.ts';
import { historyOf, withChanges } from './stringHistories.ts';

/** Generalised least squares with the covariance written out: noise, and a response that is normal about nought. */
function withMlMatrix({ changes, responseDeviation }: OwnHistory) {
  const season = Matrix.columnVector(changes.map((change) => change.season));
  const noise = Matrix.diag(changes.map((change) => change.sigmaCents ** 2));
  const precision = inverse(
    season
      .mmul(season.transpose())
      .mul(responseDeviation ** 2)
      .add(noise),
  );
  const years = Matrix.columnVector(changes.map((change) => change.years));
  const cents = Matrix.columnVector(changes.map((change) => change.cents));
  const information = years.transpose().mmul(precision).mmul(years).get(0, 0);
  return { rate: years.transpose().mmul(precision).mmul(cents).get(0, 0) / information, information };
}

describe('a string’s rate', () => {
  it.each([4, 7, 20])('agrees with generalised least squares by a general library (%i changes)', (count) => {
    const history = historyOf({ count, centsPerYear: -1, strayedResponse: 0.2 }, seededRandom(count));
    const weights = history.changes.map(({ sigmaCents }) => 1 / sigmaCents ** 2);
    const ours = fitRate(history.changes, weights, history.responseDeviation);
    const theirs = withMlMatrix(history);
    expect(ours.rate).toBeCloseTo(theirs.rate, 9);
    expect(ours.information / theirs.information).toBeCloseTo(1, 9);
  });

  it('holds the true rate within two uncertainties in 92 to 98 of 100 strings', () => {
    const random = seededRandom(11);
    const count = 600;
    const held = Array.from({ length: count }, () => {
      const responseDeviation = 0.1;
      const strayedResponse = responseDeviation * random.normal();
      const { centsPerYear, standardUncertainty } = stringRate(
        historyOf({ count: 10, centsPerYear: -1, strayedResponse, responseDeviation }, random),
      );
      return Math.abs((centsPerYear ?? 0) + 1) < 1.96 * standardUncertainty;
    }).filter(Boolean).length;
    expect(held / count).toBeGreaterThan(0.92);
    expect(held / count).toBeLessThan(0.98);
  });

  it('is hardly moved by one wild change', () => {
    const history = historyOf({ count: 12 }, seededRandom(4));
    const wild = stringRate(withChanges(history, { 5: -12 }));
    // Plain least squares would follow by 12·0.5/(12·0.25) = 2 cents a year.
    expect(Math.abs((wild.centsPerYear ?? 0) - (stringRate(history).centsPerYear ?? 0))).toBeLessThan(0.4);
  });

  it('is unknown where there is no change', () => {
    expect(stringRate({ changes: [], responseDeviation: 0.1 }).centsPerYear).toBeNull();
  });
});
