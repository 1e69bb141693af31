/** Strings as different from each other as those of different pianos, and the registers that the tables are sorted by. */
import type { SeededRandom } from '../support/seededRandom.ts';
import type { StringSpec } from '../support/stringTone.ts';
import { typicalB, typicalDecayTimeS, typicalStrikePosition } from '../support/typicalPiano.ts';

export type Register = { readonly name: string; readonly lowestMidi: number; readonly highestMidi: number };

export const REGISTERS: readonly Register[] = [
  { name: 'A0–B1', lowestMidi: 21, highestMidi: 35 },
  { name: 'C2–B3', lowestMidi: 36, highestMidi: 59 },
  { name: 'C4–B5', lowestMidi: 60, highestMidi: 83 },
  { name: 'C6–C8', lowestMidi: 84, highestMidi: 108 },
];

export function registerOf(midi: number): Register {
  const register = REGISTERS.find(({ highestMidi }) => midi <= highestMidi);
  if (!register) throw new RangeError(`midi must be at most 108, got ${midi}`);
  return register;
}

/** `count` notes spread evenly over the register, a different set for each turn. */
export function spreadNotes({ lowestMidi, highestMidi }: Register, count: number, turn: number): number[] {
  const span = highestMidi - lowestMidi + 1;
  return Array.from(
    { length: count },
    (_, index) => lowestMidi + Math.floor(((index + ((0.618 * turn) % 1)) * span) / count),
  );
}

/** Within `detuneCents` of the note, B within a factor of about 1.6, every second string with an aftersound. */
export function randomString(midi: number, detuneCents: number, random: SeededRandom): StringSpec {
  return {
    midi,
    offsetCents: detuneCents * (2 * random.uniform() - 1),
    inharmonicityB: typicalB(midi) * Math.exp(0.25 * random.normal()),
    decayTimeS: typicalDecayTimeS(midi) * Math.exp(0.2 * random.normal()),
    strikePosition: typicalStrikePosition(midi) * (0.85 + 0.3 * random.uniform()),
    aftersound:
      random.uniform() < 0.5
        ? null
        : { ratio: 0.05 + 0.15 * random.uniform(), slowDownFactor: 2 + 3 * random.uniform() },
  };
}
