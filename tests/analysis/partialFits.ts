/** Partials as the fit would describe them, written by hand. */
import type { FittedComponent, PartialFit } from '../../src/analysis/tone/partialFit.ts';

export type ComponentSpec = { readonly hz: number; readonly amplitude: number } & Partial<FittedComponent>;

export function component(spec: ComponentSpec): FittedComponent {
  return { standardUncertaintyHz: 1e-4, dampingPerS: 1, relativeUncertainty: 1e-3, ...spec };
}

/** A partial 60 dB above the noise, heard for 3 s, its components' frequencies known independently of each other. */
export function partialOf(
  partialNumber: number,
  components: readonly ComponentSpec[],
  overrides: Partial<PartialFit> = {},
): PartialFit {
  const full = components.map(component);
  return {
    partialNumber,
    hz: full[0]!.hz,
    standardUncertaintyHz: full[0]!.standardUncertaintyHz,
    components: full,
    covarianceHz: full.map((a, i) => full.map((_, j) => (i === j ? a.standardUncertaintyHz ** 2 : 0))),
    suspected: full,
    snrDb: 60,
    audibleS: 3,
    noiseRms: 1e-4,
    sampleRateHz: 44100,
    explainedShare: 1,
    ...overrides,
  };
}
