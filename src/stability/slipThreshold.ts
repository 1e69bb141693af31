/** Which slip matters, in cents a year. */
import type { Instrument } from '../piano/instrument.ts';

/**
 * Where an instrument names none of its own. Chosen: after five years such a string stands 5 cents off its unison, which an owner hears.
 * A smaller figure makes the verdict ask for more visits before it says holding; a larger one lets slow slips pass.
 */
const USUAL_SLIP_CENTS_PER_YEAR = 1;

export function slipThresholdOf(instrument: Pick<Instrument, 'slipThresholdCentsPerYear'>): number {
  return instrument.slipThresholdCentsPerYear ?? USUAL_SLIP_CENTS_PER_YEAR;
}
