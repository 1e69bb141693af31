/**
 * Notes by MIDI number (A4 = 69) and scientific pitch name with sharps. A piano of 88 notes is MIDI 21 (A0) to 108 (C8).
 */

const PITCH_CLASSES = ['C', 'C#', 'D', 'D#', 'E', 'F', 'F#', 'G', 'G#', 'A', 'A#', 'B'] as const;

/** @example midiToName(69) // 'A4' */
export function midiToName(midi: number): string {
  if (!Number.isInteger(midi)) throw new RangeError(`midi must be a whole number, got ${midi}`);
  const pitchClass = PITCH_CLASSES[((midi % 12) + 12) % 12];
  return `${pitchClass}${Math.floor(midi / 12) - 1}`;
}

/**
 * Reads a scientific pitch name; flats and the typographic signs ♯ ♭ are understood, small letters too.
 * Returns undefined for anything else.
 * @example nameToMidi('F#3') // 54
 */
export function nameToMidi(name: string): number | undefined {
  const parts = /^([A-Ga-g])([#♯b♭]?)(-?\d{1,2})$/.exec(name.trim());
  if (!parts) return undefined;
  const [, letter = '', accidental = '', octave = ''] = parts;
  const natural = PITCH_CLASSES.indexOf(letter.toUpperCase() as (typeof PITCH_CLASSES)[number]);
  const shift = accidental === '' ? 0 : accidental === '#' || accidental === '♯' ? 1 : -1;
  return (Number(octave) + 1) * 12 + natural + shift;
}

/**
 * Equal temperament at a pitch standard (the frequency of A4; 440 Hz in ISO 16:1975).
 * @example midiToHz(21, 440) // 27.5
 */
export function midiToHz(midi: number, pitchStandardHz: number): number {
  return pitchStandardHz * 2 ** ((midi - 69) / 12);
}

/** Position of a frequency on the MIDI scale, with fractions of a semitone. */
export function hzToMidi(frequencyHz: number, pitchStandardHz: number): number {
  return 69 + 12 * Math.log2(frequencyHz / pitchStandardHz);
}
