/** The options of the commands, checked one by one. What is wrong is a UsageFault that names the option and the value. */
import { type ParseArgsConfig, parseArgs } from 'node:util';
import { COMPASS_88, type Compass, parseCompass } from '../piano/compass.ts';
import { nameToMidi } from '../piano/note.ts';
import type { StringPosition } from '../piano/reading.ts';
import { UsageFault } from './terminal.ts';

type OptionKinds = NonNullable<ParseArgsConfig['options']>;
export type ParsedArguments = {
  readonly files: readonly string[];
  readonly values: Readonly<Record<string, string | boolean | undefined>>;
};

/** Splits arguments into file names and options; everything after `--` is a file name. */
export function parseArguments(args: readonly string[], options: OptionKinds): ParsedArguments {
  try {
    const { values, positionals } = parseArgs({ args: [...args], options, allowPositionals: true, strict: true });
    return { files: positionals, values: values as ParsedArguments['values'] };
  } catch (error) {
    throw new UsageFault(parseComplaint(error));
  }
}

function parseComplaint(error: unknown): string {
  const [firstLine = ''] = (error instanceof Error ? error.message : String(error)).split('\n');
  const unknown = /^Unknown option '([^']+)'/.exec(firstLine);
  if (unknown)
    return `unknown option ${unknown[1]}; --help lists the options, and a file name that begins with - goes after --`;
  return `${firstLine.charAt(0).toLowerCase()}${firstLine.slice(1).replace(/\.$/, '')}; --help explains the options`;
}

/** Pitch standards that pianos have been tuned to, with room to spare (about 415 to 460 Hz in practice). */
const LOWEST_PITCH_STANDARD_HZ = 380;
const HIGHEST_PITCH_STANDARD_HZ = 480;
const USUAL_PITCH_STANDARD_HZ = 440;

export function pitchStandardOption(text: unknown): number {
  if (text === undefined) return USUAL_PITCH_STANDARD_HZ;
  const pitchStandardHz = /^\d+(\.\d+)?$/.test(String(text)) ? Number(text) : Number.NaN;
  if (pitchStandardHz >= LOWEST_PITCH_STANDARD_HZ && pitchStandardHz <= HIGHEST_PITCH_STANDARD_HZ)
    return pitchStandardHz;
  const range = `${LOWEST_PITCH_STANDARD_HZ} to ${HIGHEST_PITCH_STANDARD_HZ}`;
  throw new UsageFault(`--pitch must be the frequency of A4 in Hz, from ${range}, got "${text}"`);
}

/** 0 where nothing is said. */
export function stringOption(text: unknown): StringPosition {
  if (text === undefined) return 0;
  if (text === '0' || text === '1' || text === '2' || text === '3') return Number(text) as StringPosition;
  throw new UsageFault(`--string must be 1, 2 or 3 from left to right, or 0 for the whole unison, got "${text}"`);
}

/** No piano goes beyond these: C0 and B8. */
const LOWEST_MIDI = 12;
const HIGHEST_MIDI = 119;

export function noteOption(text: unknown): number | undefined {
  if (text === undefined) return undefined;
  const midi = nameToMidi(String(text));
  if (midi !== undefined && midi >= LOWEST_MIDI && midi <= HIGHEST_MIDI) return midi;
  throw new UsageFault(`--note must be a note name such as A4, F#3 or Bb2, got "${text}"`);
}

export function compassOption(text: unknown): Compass {
  if (text === undefined) return COMPASS_88;
  const compass = parseCompass(String(text));
  if (compass && compass.lowestMidi >= LOWEST_MIDI && compass.highestMidi <= HIGHEST_MIDI) return compass;
  throw new UsageFault(`--compass must be two notes, the lower one first, as in A0-C8, got "${text}"`);
}
