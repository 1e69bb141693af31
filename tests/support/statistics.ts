/** Medians, percentiles and shares of measured errors. */

/** Value below which the share `q` (0 to 1) of the values lies, straight lines between the ranks. Undefined for no values. */
export function quantile(values: readonly number[], q: number): number | undefined {
  const sorted = [...values].sort((a, b) => a - b);
  const rank = q * (sorted.length - 1);
  const low = sorted[Math.floor(rank)];
  const high = sorted[Math.ceil(rank)];
  return low === undefined || high === undefined ? undefined : low + (rank - Math.floor(rank)) * (high - low);
}

export function median(values: readonly number[]): number | undefined {
  return quantile(values, 0.5);
}

export function rootMeanSquare(values: readonly number[]): number | undefined {
  if (values.length === 0) return undefined;
  return Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);
}

/** Percent of the items for which the claim holds. Undefined for no items. */
export function percentOf<Item>(items: readonly Item[], claim: (item: Item) => boolean): number | undefined {
  return items.length === 0 ? undefined : (100 * items.filter(claim).length) / items.length;
}
