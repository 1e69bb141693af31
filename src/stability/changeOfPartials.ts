/**
 * How far a string moved, from several of its partials' frequencies at two dates.
 *
 * Each partial's change in cents, times (1 + B·n²)/(1 + B), is its own reading of how far partial 1 moved (change.ts tells the model and where
 * it ends). They are put together so that a partial which disagrees with the rest loses its say (changeRobustMean.ts).
 */
import { hzToCents, uncertaintyHzToCents } from '../piano/cents.ts';
import { type PartialChange, robustMean } from './changeRobustMean.ts';

export type PartialFrequency = {
  readonly partialNumber: number;
  readonly hz: number;
  readonly standardUncertaintyHz: number;
};

export type PartialsChange =
  | {
      readonly known: true;
      /** Of partial 1; positive: sharper than before. */
      readonly cents: number;
      readonly standardUncertaintyCents: number;
      /** How many partials had a say. */
      readonly partialCount: number;
    }
  | { readonly known: false; readonly reason: 'no-common-partial' };

/**
 * Partials read at one date only say nothing and are passed over. With one in common its own change is given.
 * @param inharmonicityB of the string; 0 where nobody measured it, and the change then reads small by what B would have made of it
 * @throws {RangeError} if a frequency of a common partial is not above zero, or B is below zero
 * @example changeOfPartials([{ partialNumber: 1, hz: 440, standardUncertaintyHz: 0.03 }],
 *   [{ partialNumber: 1, hz: 441, standardUncertaintyHz: 0.04 }], 0).cents // 3.930
 */
export function changeOfPartials(
  before: readonly PartialFrequency[],
  after: readonly PartialFrequency[],
  inharmonicityB: number,
): PartialsChange {
  if (!(inharmonicityB >= 0)) throw new RangeError(`inharmonicityB must be at least zero, got ${inharmonicityB}`);
  const later = new Map(after.map((partial) => [partial.partialNumber, partial]));
  const changes = before.flatMap((partial) => {
    const match = later.get(partial.partialNumber);
    return match ? [asPartial1(changeOfFrequency(partial, match), partial.partialNumber, inharmonicityB)] : [];
  });
  const [first, second] = changes;
  if (!first) return { known: false, reason: 'no-common-partial' };
  if (!second) return { known: true, cents: first.cents, standardUncertaintyCents: first.sigmaCents, partialCount: 1 };
  const { cents, sigmaCents, heardCount } = robustMean(changes);
  return { known: true, cents, standardUncertaintyCents: sigmaCents, partialCount: heardCount };
}

function asPartial1(change: PartialChange, partialNumber: number, inharmonicityB: number): PartialChange {
  const share = (1 + inharmonicityB * partialNumber ** 2) / (1 + inharmonicityB);
  return { cents: change.cents * share, sigmaCents: change.sigmaCents * share };
}

type Frequency = Pick<PartialFrequency, 'hz' | 'standardUncertaintyHz'>;

/** @throws {RangeError} if a frequency is not above zero */
export function changeOfFrequency(before: Frequency, after: Frequency): PartialChange {
  if (!(before.hz > 0 && after.hz > 0))
    throw new RangeError(`frequencies must be above zero, got ${before.hz} and ${after.hz}`);
  const beforeCents = uncertaintyHzToCents(before.standardUncertaintyHz, before.hz);
  const afterCents = uncertaintyHzToCents(after.standardUncertaintyHz, after.hz);
  return { cents: hzToCents(after.hz, before.hz), sigmaCents: Math.hypot(beforeCents, afterCents) };
}
