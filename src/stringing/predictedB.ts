/**
 * Inharmonicity that a string's dimensions lead one to expect: f_n = n·f0·√(1 + B·n²).
 *
 * Model: B = π³·E·d⁴/(64·T·L²), a round elastic wire on two pins that do not move (H. Fletcher, J. Acoust. Soc. Am. 36 (1964)
 * 203–209; R. W. Young, J. Acoust. Soc. Am. 24 (1952) 267–273 agrees). B is in proportion to E, to d² at a given pitch, and to 1/L⁴: one half
 * gauge (2.5 %) moves it by 5 %, 1 % of length by 4 %. Bridge and soundboard move single low partials and are not in it. Ends that
 * clamp the wire raise all partials alike, by (2/π)·√B, and leave B as it is (Fletcher 1964; from memory).
 *
 * Wound strings: the same with the core's stiffness and the whole string's tension, as the wrap's turns hardly resist bending. That
 * is a lower bound: the wrap stiffens a little (published measurements find more than this, far less than touching turns would give),
 * and bare ends and a stepped wrap make partials depart from n² altogether. Good for comparing strings, not for their diameters.
 */
import { positive } from './positiveFigure.ts';

export type StiffString = {
  /** Of the core in a wound string. */
  readonly coreDiameterMm: number;
  readonly speakingLengthMm: number;
  readonly tensionN: number;
  readonly youngsModulusGpa: number;
};

/**
 * @throws {RangeError} if a figure is not a finite number above zero
 * @example predictedB({ coreDiameterMm: 1.049, speakingLengthMm: 960, tensionN: 766, youngsModulusGpa: 200 }) // 1.663e-4
 */
export function predictedB(string: StiffString): number {
  const diameterM = positive('coreDiameterMm', string.coreDiameterMm) / 1000;
  const lengthM = positive('speakingLengthMm', string.speakingLengthMm) / 1000;
  const youngsModulusPa = positive('youngsModulusGpa', string.youngsModulusGpa) * 1e9;
  return (
    (Math.PI ** 3 * youngsModulusPa * diameterM ** 4) / (64 * positive('tensionN', string.tensionN) * lengthM ** 2)
  );
}
