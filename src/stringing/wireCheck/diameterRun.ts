/**
 * Does a stated diameter fit the run of its neighbours? Up the compass plain wire gets thinner, in runs of a few notes; a diameter
 * above what lies below it, or below what lies above it, is a slip of the pen or a wrong wire more often than a design. Common practice.
 */

export type StatedDiameter = { readonly midi: number; readonly diameterMm: number };

/** What the neighbours leave room for. */
export type DiameterRoom = { readonly leastMm: number; readonly mostMm: number };

/** How many neighbours on either side have a say; their middle counts, so that one wrong one among them does not. */
const NEIGHBOUR_COUNT = 3;
/** Rounding of a stated diameter. */
const TOLERANCE_MM = 0.002;

/**
 * @param section plain wire of one section, ascending by note
 * @param hasNoSay notes whose size is thought to be wrong
 */
export function roomFor(
  section: readonly StatedDiameter[],
  midi: number,
  hasNoSay: ReadonlySet<number> = new Set(),
): DiameterRoom {
  const others = section.filter((note) => !hasNoSay.has(note.midi));
  const sizes = (side: readonly StatedDiameter[]) => side.map(({ diameterMm }) => diameterMm);
  const below = sizes(others.filter((note) => note.midi < midi).slice(-NEIGHBOUR_COUNT));
  const above = sizes(others.filter((note) => note.midi > midi).slice(0, NEIGHBOUR_COUNT));
  return {
    leastMm: above.length === 0 ? 0 : middle(above),
    mostMm: below.length === 0 ? Number.POSITIVE_INFINITY : middle(below),
  };
}

export function hasRoom({ leastMm, mostMm }: DiameterRoom, diameterMm: number): boolean {
  return diameterMm >= leastMm - TOLERANCE_MM && diameterMm <= mostMm + TOLERANCE_MM;
}

function middle(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}
