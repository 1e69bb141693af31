/**
 * Mass of a wound string: a core of steel in one wrap of round wire, laid turn to turn.
 *
 * Model: μ = (π/4)·[ρ_core·d² + k·ρ_wrap·(D² − d²)] with k = π/4. Taken as wrapped from end to end: 20 mm of bare core at each end
 * of 1200 mm, where the string moves least, make less than 0.01 % of the tension (derived here, for partial 1). Not for a wrap of
 * flat wire; a double wrap of the same metal is a little heavier than this says. A wrap that was filed, or that sinks into the core's
 * flats, differs. Source: geometry; the form is the trade's.
 */
import type { WrapMetal } from '../piano/stringingRecords.ts';
import { STEEL_DENSITY, WRAP_DENSITIES, WRAP_FILL } from '../piano/wireMaterial.ts';
import { positive } from './positiveFigure.ts';

export type WoundString = {
  readonly coreDiameterMm: number;
  /** Over the wrap. */
  readonly overallDiameterMm: number;
  readonly wrap: WrapMetal;
};

/**
 * @throws {RangeError} if a figure is not a finite number above zero, or the core is not thinner than the whole
 * @example massPerLength({ coreDiameterMm: 1.397, overallDiameterMm: 4, wrap: 'copper' }) // 0.08942 kg/m
 */
export function massPerLength(string: WoundString, coreDensityKgPerM3: number = STEEL_DENSITY.value): number {
  const core = positive('coreDiameterMm', string.coreDiameterMm) / 1000;
  const overall = positive('overallDiameterMm', string.overallDiameterMm) / 1000;
  if (core >= overall)
    throw new RangeError(
      `coreDiameterMm must be below overallDiameterMm, got ${string.coreDiameterMm} and ${string.overallDiameterMm}`,
    );
  const wrapDensity = WRAP_DENSITIES[string.wrap].value;
  const steel = positive('coreDensityKgPerM3', coreDensityKgPerM3) * core ** 2;
  return (Math.PI / 4) * (steel + WRAP_FILL * wrapDensity * (overall ** 2 - core ** 2));
}
