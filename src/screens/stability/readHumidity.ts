/** A typed humidity in %RH, or null where it is none that a room has. A decimal comma is understood. */
export function readHumidity(text: string): number | null {
  const value = /^\s*\d{1,2}([.,]\d+)?\s*$/.test(text) ? Number(text.replace(',', '.')) : Number.NaN;
  return value >= 10 && value <= 90 ? value : null;
}
