/**
 * What torques of tuning pins are usual, by how practitioners speak of them.
 *
 * Standing: common practice, gathered from single rebuilders' and technicians' reports in inch-pounds; no standard was found, nor any
 * published series of torque over the years. They disagree: some have seen pins hold at 30 to 40 in·lb for years, some hold that
 * torque tells little and only kept pitch counts. So a band is a place on a scale, never a verdict.
 */
import { inchPoundsToNm } from '../piano/torque.ts';

export type TorqueBandName = 'below holding' | 'doubtful' | 'adequate' | 'as in a new block' | 'tight';

export type TorqueBand = {
  readonly name: TorqueBandName;
  readonly fromNm: number;
  /** Null: no upper end. */
  readonly toNm: number | null;
};

/** In inch-pounds: seldom holds below; the owner should be told below; hoped for in new work from, up to; hard to tune above. */
const LIMITS_INCH_POUNDS = [30, 50, 80, 150] as const;
const [HOLDING, DOUBTFUL, NEW, TIGHT] = LIMITS_INCH_POUNDS.map(inchPoundsToNm) as [number, number, number, number];

/** From the loosest up, without a gap. */
export const TORQUE_BANDS: readonly TorqueBand[] = [
  { name: 'below holding', fromNm: 0, toNm: HOLDING },
  { name: 'doubtful', fromNm: HOLDING, toNm: DOUBTFUL },
  { name: 'adequate', fromNm: DOUBTFUL, toNm: NEW },
  { name: 'as in a new block', fromNm: NEW, toNm: TIGHT },
  { name: 'tight', fromNm: TIGHT, toNm: null },
];

/** @throws {RangeError} if the torque is not a finite number above zero */
export function torqueBand(torqueNm: number): TorqueBandName {
  if (!Number.isFinite(torqueNm) || torqueNm <= 0)
    throw new RangeError(`torqueNm must be a finite number above zero, got ${torqueNm}`);
  const band = TORQUE_BANDS.find(({ toNm }) => toNm === null || torqueNm < toNm);
  return band?.name ?? 'tight';
}
