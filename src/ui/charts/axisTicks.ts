/** How figures are written beside an axis: whole where they are. */
import { formatNumber, formatSigned } from '../../piano/format.ts';

export function plainTick(value: number): string {
  return formatNumber(value, decimalsOf(value));
}

export function signedTick(value: number): string {
  return formatSigned(value, decimalsOf(value));
}

function decimalsOf(value: number): number {
  return Number.isInteger(value) ? 0 : 1;
}
