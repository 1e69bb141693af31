/** @throws {RangeError} that names the figure, if it is not a finite number above zero */
export function positive(name: string, value: number): number {
  if (Number.isFinite(value) && value > 0) return value;
  throw new RangeError(`${name} must be a finite number above zero, got ${value}`);
}
