/** Whether a string went flat again and again, or just once. */
import type { OwnHistory } from './ownChanges.ts';
import { fitRate, trustedWeights } from './stringRates.ts';

/**
 * How many standard deviations the rate stands below nought when the one change that speaks most for a slip is left out: the least over
 * all changes. Nought with fewer than three of them.
 */
export function repetition(history: OwnHistory): number {
  const { changes, responseDeviation } = history;
  if (changes.length < 3) return 0;
  const trust = trustedWeights(history);
  const weights = changes.map(({ sigmaCents }, j) => trust[j]! / sigmaCents ** 2);
  return Math.min(
    ...changes.map((_, left) => {
      const kept = weights.map((weight, j) => (j === left ? 0 : weight));
      const { rate, information } = fitRate(changes, kept, responseDeviation);
      return information > 0 ? -rate * Math.sqrt(information) : 0;
    }),
  );
}
