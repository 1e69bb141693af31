/** How far notes stand off a smooth curve, wrong ones left out of account. */

export type SpreadPrior = {
  /** What the spread usually is, in the unit of the figures, and how many notes that knowledge is worth. */
  readonly usual: number;
  readonly worthNotes: number;
  /** Notes of one group share a spread; groups are numbered from 0. */
  readonly groupCount: number;
  readonly groupOf: (midi: number) => number;
  /** How many notes the spread of all groups together is worth to each group. */
  readonly groupWorthNotes: number;
};

export type Residual = { readonly group: number; readonly size: number; readonly standardUncertainty: number };

/** Huber's corner: residuals beyond 1.5 sigma count as 1.5. 96 % efficient with normal errors. Source: common practice. */
const CORNER = 1.5;
/** Mean of min(z², 1.5²) for a standard normal z (arithmetic: 1 − 2·c·φ(c) + 2·(c² − 1)·(1 − Φ(c))). */
const CORNER_MEAN = 0.778465;

/**
 * One spread for each group: first one for all notes, drawn towards the usual one, then each group's own, drawn towards that of all.
 * @param taken how much of the residuals' freedom the curve has taken
 */
export function fittedSpreads(prior: SpreadPrior, residuals: readonly Residual[], taken: number): number[] {
  const share = Math.max(0.1, 1 - taken / residuals.length);
  const all = fittedSpread(residuals, share, prior.usual, prior.worthNotes);
  if (prior.groupCount === 1) return [all];
  return Array.from({ length: prior.groupCount }, (_, group) => {
    const own = residuals.filter((residual) => residual.group === group);
    return fittedSpread(own, share, all, prior.groupWorthNotes);
  });
}

/** The spread at which the residuals, cut at the corner, are as large as they ought to be. */
function fittedSpread(residuals: readonly Residual[], share: number, usual: number, worthNotes: number): number {
  const wanted = CORNER_MEAN * (share * residuals.length + worthNotes);
  const isTooSmall = (spread: number) => {
    const known = CORNER_MEAN * worthNotes * (usual / spread) ** 2;
    return residuals.reduce((sum, residual) => sum + cutSquare(residual, spread), known) > wanted;
  };
  let low = 1e-3 * usual;
  let high = Math.max(usual, ...residuals.map(({ size }) => size)) * 10;
  for (let round = 0; round < 60; round++) {
    const middle = Math.sqrt(low * high);
    if (isTooSmall(middle)) low = middle;
    else high = middle;
  }
  return high;
}

function cutSquare({ size, standardUncertainty }: Residual, spread: number): number {
  return Math.min(size ** 2 / (standardUncertainty ** 2 + spread ** 2), CORNER ** 2);
}
