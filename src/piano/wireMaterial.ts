/** Densities and stiffness of what strings are made of, each with its source and standing. */
import type { WrapMetal } from './stringingRecords.ts';

export type Standing = 'definition' | 'standard' | 'secondary' | 'from memory' | 'own';

export type MaterialFigure = {
  readonly value: number;
  readonly source: string;
  readonly standing: Standing;
};

/** In kg/m³. A modern trade constant (24 662 = π·ρ) agrees with it; a steel of the period is given as about 7770. */
export const STEEL_DENSITY: MaterialFigure = {
  value: 7850,
  source: 'a spring maker’s glossary entry for EN 10270-1',
  standing: 'secondary',
};

/**
 * In GPa, for wire of 0.8 to 1.6 mm. Textbook tables step from 203 (thinner) to 197 (thicker); R. W. Young (J. Acoust. Soc. Am. 24
 * (1952) 267–273) used E/ρ = 25.5e6 m²/s², which is 200 GPa at 7850 kg/m³. Predicted B moves in proportion to it.
 */
export const STEEL_YOUNGS_MODULUS: MaterialFigure = {
  value: 200,
  source: 'J. E. Shigley and others, table of music wire in the chapter on springs; Young 1952',
  standing: 'secondary',
};

/** In kg/m³. Tension moves by the wrap's share of the mass: 0.3 % for copper's 8930 against 8960. */
export const WRAP_DENSITIES: Readonly<Record<WrapMetal, MaterialFigure>> = {
  copper: { value: 8930, source: 'handbook value of drawn copper; 8960 is given too', standing: 'from memory' },
  iron: { value: 7860, source: 'handbook value of soft iron', standing: 'from memory' },
  brass: { value: 8500, source: 'handbook value, between 8440 and 8530 by alloy', standing: 'from memory' },
};

/**
 * Share of the ring between core and outside that round wire, wound turn to turn, fills: a turn of wire of diameter w takes w of
 * length and π·(mean diameter)·π·w²/4 of volume. Exact for that shape. The trade's 0.89 in mass formulas is this times copper's density over steel's.
 */
export const WRAP_FILL = Math.PI / 4;
