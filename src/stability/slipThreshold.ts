/** Which slip matters, in cents a year. */
/**
 * Where an instrument names none of its own. Chosen: after five years such a string stands 5 cents off its unison, which an owner hears.
 * A smaller figure makes the verdict ask for more visits before it says holding; a larger one lets slow slips pass.
 */
const USUAL_SLIP_CENTS_PER_YEAR = 1;

/** What an instrument may say of it. */
export type OwnThreshold = { readonly slipThresholdCentsPerYear?: number | undefined };

export function slipThresholdOf(instrument: OwnThreshold): number {
  return instrument.slipThresholdCentsPerYear ?? USUAL_SLIP_CENTS_PER_YEAR;
}
