/** Steps from flat to sharp: seven classes about nought, equal on both sides. */

/** Below nought flat, above it sharp. */
export type Level = -3 | -2 | -1 | 0 | 1 | 2 | 3;

export const LEVELS: readonly Level[] = [-3, -2, -1, 0, 1, 2, 3];

const ROUND_STEPS = [0.2, 0.5, 1, 2, 5, 10, 20, 50];
/** Nearly all values shall lie within this many classes of nought; a few wild ones may share the last class with the large ones. */
const TOLD_SHARE = 0.97;
const TOLD_STEPS = 4.5;

/**
 * The width of a class, so that most values are told apart.
 * @example divergingStep([0.4, -1.2, 6.1]) // 2: classes up to ±1, ±3, ±5 and beyond
 */
export function divergingStep(values: readonly number[]): number {
  const sizes = values.map(Math.abs).sort((a, b) => a - b);
  const large = sizes[Math.floor(TOLD_SHARE * (sizes.length - 1))] ?? 0;
  return ROUND_STEPS.find((step) => large <= TOLD_STEPS * step) ?? 100;
}

/** @example levelOf(-1.6, 1) // -2 */
export function levelOf(value: number, step: number): Level {
  const level = Math.min(3, Math.max(-3, Math.sign(value) * Math.round(Math.abs(value) / step)));
  return (level + 0) as Level;
}

export type LevelRange = { readonly from: number | null; readonly to: number | null };

/** What a class holds; null where it has no end. @example levelRange(3, 1) // { from: 2.5, to: null } */
export function levelRange(level: Level, step: number): LevelRange {
  const from = level === -3 ? null : (level - 0.5) * step;
  const to = level === 3 ? null : (level + 0.5) * step;
  return { from, to };
}
