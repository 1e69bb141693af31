/** One string's own changes, made to measure. */
import type { OwnHistory } from '../../../src/stability/drift/ownChanges.ts';
import type { SeededRandom } from '../../support/seededRandom.ts';

export type HistorySpec = {
  readonly count: number;
  readonly centsPerYear?: number;
  readonly strayedResponse?: number;
  /** Standard deviation of the noise; stated rightly. */
  readonly sigmaCents?: number;
  readonly responseDeviation?: number;
};

/** Half-yearly intervals, the season going 15 %RH up and down in turn. */
export function historyOf(spec: HistorySpec, random: SeededRandom): OwnHistory {
  const { count, centsPerYear = 0, strayedResponse = 0, sigmaCents = 0.5, responseDeviation = 0.1 } = spec;
  const changes = Array.from({ length: count }, (_, intervalIndex) => {
    const years = 0.45 + 0.1 * random.uniform();
    const season = (intervalIndex % 2 === 0 ? 15 : -15) + 2 * random.normal();
    const cents = centsPerYear * years + strayedResponse * season + sigmaCents * random.normal();
    return { intervalIndex, years, season, sigmaCents, cents };
  });
  return { changes, responseDeviation };
}

/** With some changes set to other values. */
export function withChanges(history: OwnHistory, cents: Readonly<Record<number, number>>): OwnHistory {
  const changes = history.changes.map((change, j) => ({ ...change, cents: cents[j] ?? change.cents }));
  return { ...history, changes };
}
