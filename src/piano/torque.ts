/** Torque of tuning pins in the two units that wrenches read. */

export type TorqueUnit = 'N·m' | 'in·lb';

/**
 * One inch-pound in newton metres: 0.0254 m times 4.4482216152605 N, both exact.
 * Standing: definition (international inch and pound, standard gravity 9.80665 m/s²).
 */
const NM_PER_INCH_POUND = 0.0254 * 4.4482216152605;

/** @example nmToInchPounds(5.649) // 50.0 */
export function nmToInchPounds(torqueNm: number): number {
  return torqueNm / NM_PER_INCH_POUND;
}

/** @example inchPoundsToNm(120) // 13.56 */
export function inchPoundsToNm(torqueInchPounds: number): number {
  return torqueInchPounds * NM_PER_INCH_POUND;
}
