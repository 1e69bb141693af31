import { readFigureWithin } from '../../piano/readFigure.ts';

/** A typed humidity in %RH, or null where it is none that a room has. */
export function readHumidity(text: string): number | null {
  return readFigureWithin(text, 10, 90) ?? null;
}
