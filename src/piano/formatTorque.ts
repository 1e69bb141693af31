/** Torque as people read it: a wrench is good to a few per cent, so a tenth of a newton metre and a whole inch-pound are enough. */
import { formatNumber } from './format.ts';
import { shownLength, shownUnits } from './formatUnits.ts';
import { nmToInchPounds, type TorqueUnit } from './torque.ts';

const NO_BREAK_SPACE = '\u00a0';
const THIN_SPACE = '\u2009';

/** Without its unit. @example formatTorqueValue(8.47, 'N·m') // '8.5' */
export function formatTorqueValue(torqueNm: number, unit: TorqueUnit): string {
  return unit === 'N·m' ? formatNumber(torqueNm, 1) : formatNumber(nmToInchPounds(torqueNm), 0);
}

/** @example formatTorque(8.47, 'in·lb') // '75 in·lb' */
export function formatTorque(torqueNm: number, unit: TorqueUnit = shownUnits().torque): string {
  return `${formatTorqueValue(torqueNm, unit)}${NO_BREAK_SPACE}${unit}`;
}

/** The chosen unit first. @example formatTorqueInBoth(8.47) // '8.5 N·m (75 in·lb)' */
export function formatTorqueInBoth(torqueNm: number): string {
  const other = shownUnits().torque === 'N·m' ? 'in·lb' : 'N·m';
  return `${formatTorque(torqueNm)} (${formatTorque(torqueNm, other)})`;
}

/** @example formatMultiple(2.91) // '2.9 ×' */
export function formatMultiple(multiple: number): string {
  return `${formatNumber(multiple, 1)}${THIN_SPACE}×`;
}

/** A pin's or a wire's diameter. @example formatDiameter(7.16) // '7.16 mm' */
export function formatDiameter(diameterMm: number): string {
  const { length } = shownUnits();
  return `${formatNumber(shownLength(diameterMm), length === 'mm' ? 2 : 3)}${NO_BREAK_SPACE}${length}`;
}
