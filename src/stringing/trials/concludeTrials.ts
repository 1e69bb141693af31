/** Several trials on one string: which of them changed its beats, and what follows. */
import { compareTrial, type TrialResult, type TrialTakes } from './compareTrial.ts';

export type TrialConclusion = {
  /** In the order tried. */
  readonly results: readonly TrialResult[];
  /** The trial that took most of the beating away; null where none did. */
  readonly named: TrialResult | null;
  readonly kind: /** One trial stopped or weakened the beats. */
    | 'one trial helps'
    /** Several did: the first that lasts is the one. */
    | 'several trials help'
    /** All were judged, and none did: the cause is not at the bridge, the seat or the twist (common practice: then the soundboard or bridge at this frequency, or the wire). */
    | 'no trial helps'
    /** Something changed, and nothing got better. */
    | 'changed, not better'
    | 'cannot tell';
};

/** @param trials of one string, in the order tried */
export function concludeTrials(trials: readonly TrialTakes[]): TrialConclusion {
  const results = trials.map(compareTrial);
  const helping = results.filter(({ outcome }) => outcome === 'stops' || outcome === 'weaker');
  const named = helping.reduce<TrialResult | null>(
    (best, result) => (best && best.relief >= result.relief ? best : result),
    null,
  );
  return { results, named, kind: kindOf(results, helping.length) };
}

function kindOf(results: readonly TrialResult[], helpingCount: number): TrialConclusion['kind'] {
  if (helpingCount > 0) return helpingCount === 1 ? 'one trial helps' : 'several trials help';
  const told = results.filter(({ outcome }) => outcome !== 'cannot tell');
  if (told.length === 0) return 'cannot tell';
  if (told.some(({ outcome }) => outcome !== 'no difference')) return 'changed, not better';
  return told.length === results.length ? 'no trial helps' : 'cannot tell';
}
