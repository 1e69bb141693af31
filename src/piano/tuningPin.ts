/**
 * Usual diameters of tuning pins. Numbering differs between makers, so the diameter is what counts and what is kept.
 * Source: common practice. 1/0 and 2/0 from rebuilders' reports, the larger ones from memory.
 */

export type PinSize = {
  readonly name: string;
  readonly diameterMm: number;
  readonly standing: 'secondary' | 'from memory';
};

export const PIN_SIZES: readonly PinSize[] = [
  { name: '1/0', diameterMm: 7.01, standing: 'secondary' }, // 0.276 in
  { name: '2/0', diameterMm: 7.16, standing: 'secondary' }, // 0.282 in
  { name: '3/0', diameterMm: 7.27, standing: 'from memory' }, // 0.286 in
  { name: '4/0', diameterMm: 7.39, standing: 'from memory' }, // 0.291 in
  { name: '5/0', diameterMm: 7.52, standing: 'from memory' }, // 0.296 in
];

/** What is taken where nobody said: 2/0. The ratio to the string's torque moves by 2.7 % from here to 4/0. */
export const USUAL_PIN_DIAMETER_MM = 7.16;

/** Pins of pianos lie well inside this. */
export const PIN_DIAMETER_RANGE_MM = { least: 5, most: 9 } as const;
