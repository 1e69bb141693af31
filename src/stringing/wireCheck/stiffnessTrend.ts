/**
 * What measured inharmonicity departs from the expected one by, along the compass: a step for each section (another bridge, other
 * wire, lengths measured from elsewhere) and a slow change. That much is common to many strings (Young's modulus off by 2 %, a
 * speaking length taken to the wrong edge) and says nothing about one string's wire.
 */
import type { CurveModel } from '../../analysis/compass/curveModel.ts';
import { bumpCentres, bumpHeights } from '../../analysis/compass/slowDeparture.ts';

/** Notes of one section, both ends included. */
export type SectionRange = { readonly fromMidi: number; readonly toMidi: number };

/**
 * In log B. Chosen: E and lengths together are rarely off by more than a sixth, a section by some per cent more, a slow change by up to
 * a tenth.
 */
const COMMON_SIGMA = 0.15;
const SECTION_SIGMA = 0.03;
const BUMP_SIGMA = 0.06;
const BUMP_SPACING = 12;
/** Of log B from string to string, besides the measuring error: lengths to half a millimetre, diameters to a few thousandths. Chosen. */
const USUAL_SPREAD = 0.01;

export function trendModel(sections: readonly SectionRange[]): CurveModel {
  const lowest = sections[0]?.fromMidi ?? 21;
  const highest = sections.at(-1)?.toMidi ?? 108;
  const centres = bumpCentres({ spacingNotes: BUMP_SPACING, lowestMidi: lowest, highestMidi: highest });
  const gradientAt = (midi: number) => [
    1,
    ...sections.map(({ fromMidi, toMidi }) => (midi >= fromMidi && midi <= toMidi ? 1 : 0)),
    ...bumpHeights(centres, BUMP_SPACING, midi),
  ];
  return {
    at: (midi, parameters) => {
      const gradient = gradientAt(midi);
      return { value: gradient.reduce((sum, height, index) => sum + height * (parameters[index] ?? 0), 0), gradient };
    },
    priors: [
      { mean: 0, sigma: COMMON_SIGMA },
      ...sections.map(() => ({ mean: 0, sigma: SECTION_SIGMA })),
      ...centres.map(() => ({ mean: 0, sigma: BUMP_SIGMA })),
    ],
    spread: { usual: USUAL_SPREAD, worthNotes: 6, groupCount: 1, groupOf: () => 0, groupWorthNotes: 0 },
  };
}
