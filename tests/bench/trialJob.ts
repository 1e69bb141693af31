/** One string and its four trials: made, measured by the product's own means, and judged. */
import { measureTake } from '../../src/analysis/tone/measureTake.ts';
import type { TrialKind } from '../../src/piano/stringingRecords.ts';
import type { TrialOutcome } from '../../src/stringing/trials/compareTrial.ts';
import { concludeTrials, type TrialConclusion } from '../../src/stringing/trials/concludeTrials.ts';
import { synthesizeNote } from '../support/syntheticString.ts';
import { TRIED, type TrialPlan, takesOf } from './trialPlans.ts';

export type TrialJobResult = {
  readonly kind: TrialConclusion['kind'];
  readonly named: TrialKind | null;
  /** In the order of TRIED. */
  readonly outcomes: readonly TrialOutcome[];
  /** What was heard of each trial, for the list of what went wrong. */
  readonly told: readonly string[];
};

export function trialJob(plan: TrialPlan): TrialJobResult {
  const readings = takesOf(plan).map((spec) => {
    const { samples } = synthesizeNote(spec);
    const options = { pitchStandardHz: 440, stringPosition: 2 as const, midi: plan.midi };
    const outcome = measureTake(samples, spec.sampleRateHz, options);
    return outcome.found ? [outcome.reading] : [];
  });
  const before = readings[0]!;
  const trials = TRIED.map((kind, index) => ({ kind, before, after: readings[index + 1]! }));
  const { results, named, kind } = concludeTrials(trials);
  const told = results.map(({ outcome, reason, partials }) => {
    const changes = partials.map(
      ({ partialNumber, before: was, after: is, change, ratioChangeStandardUncertainty }) => {
        const [from, to] = [was, is].map(
          ({ ratio, rateHz }) => `${ratio.toFixed(2)} at ${rateHz?.toFixed(2) ?? '–'} Hz`,
        );
        return `${partialNumber}: ${from} to ${to} ± ${ratioChangeStandardUncertainty.toFixed(2)}, ${change}`;
      },
    );
    return `${outcome}${reason ? ` (${reason})` : ''} [${changes.join('; ')}]`;
  });
  return { kind, named: named?.kind ?? null, outcomes: results.map(({ outcome }) => outcome), told };
}
