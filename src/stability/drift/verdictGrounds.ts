/** On what a verdict rests, as figures of closed kinds; each page says them in its own language. Files and the command line have them in English. */
import { midiToName } from '../../piano/note.ts';
import type { StringPosition } from '../../piano/reading.ts';

export type GroundPin = {
  readonly midi: number;
  readonly stringPosition: StringPosition;
  readonly centsPerYear: number;
};

export type VerdictGround =
  | {
      readonly kind: 'zone-slips';
      readonly fromMidi: number;
      readonly toMidi: number;
      readonly centsPerYear: number;
      readonly isAccelerating: boolean;
    }
  | { readonly kind: 'pins-slip'; readonly pins: readonly GroundPin[] }
  | { readonly kind: 'pins-suspected'; readonly pins: readonly GroundPin[] }
  | { readonly kind: 'no-string-slips'; readonly ruledOutCentsPerYear: number }
  | { readonly kind: 'slip-could-hide'; readonly ruledOutCentsPerYear: number }
  | { readonly kind: 'never-compared' }
  | { readonly kind: 'few-notes'; readonly noteCount: number }
  | { readonly kind: 'has-to-repeat'; readonly visitCount: number }
  | { readonly kind: 'too-short'; readonly years: number }
  | { readonly kind: 'compared'; readonly intervalCount: number; readonly years: number }
  | { readonly kind: 'others-steady'; readonly stringCount: number; readonly ruledOutCentsPerYear: number }
  | { readonly kind: 'pins-open'; readonly pins: readonly GroundPin[] }
  | { readonly kind: 'season-inferred' };

/** These limit the verdict rather than support it. */
export function isLimit({ kind }: VerdictGround): boolean {
  return kind === 'others-steady' || kind === 'pins-open' || kind === 'season-inferred';
}

/** In English, for files and the command line. @example groundSentence({ kind: 'too-short', years: 0.4 }) // '0.4 years are too short …' */
export function groundSentence(ground: VerdictGround): string {
  switch (ground.kind) {
    case 'zone-slips': {
      const growing = ground.isAccelerating ? ', faster each year' : '';
      return `${midiToName(ground.fromMidi)} to ${midiToName(ground.toMidi)} go flat together by ${rate(ground.centsPerYear)}${growing}`;
    }
    case 'pins-slip':
      return `${names(ground.pins)} ${ground.pins.length === 1 ? 'goes flat by itself' : 'go flat by themselves'}, again and again`;
    case 'pins-suspected':
      return `${names(ground.pins)} went flat more than chance lets expect, but not yet for certain`;
    case 'no-string-slips':
      return `no string goes flat by itself: slips faster than ${rate(ground.ruledOutCentsPerYear)} are ruled out at 95 %`;
    case 'slip-could-hide':
      return `no string stands out, but a slip of up to ${rate(ground.ruledOutCentsPerYear)} could still hide in the scatter; further visits would narrow it`;
    case 'few-notes':
      return `${ground.noteCount} ${ground.noteCount === 1 ? 'note is' : 'notes are'} too few to tell a string from the whole instrument; survey the compass`;
    case 'never-compared':
      return 'no as-left survey is followed by an as-found one: record both at the next visits';
    case 'has-to-repeat':
      return `a slip has to repeat itself; ${ground.visitCount} more ${ground.visitCount === 1 ? 'visit' : 'visits'} with as-found and as-left would tell`;
    case 'too-short':
      return `${ground.years.toFixed(1)} years are too short to tell a slip from the season; come back in half a year`;
    case 'compared':
      return `${ground.intervalCount} ${ground.intervalCount === 1 ? 'interval' : 'intervals'} between an as-left and the next as-found, ${ground.years.toFixed(1)} years in all`;
    case 'others-steady':
      return `against it: the other ${ground.stringCount} strings keep their places, slips above ${rate(ground.ruledOutCentsPerYear)} ruled out`;
    case 'pins-open':
      return `except ${names(ground.pins)}, of which it cannot be said yet: the next visits will tell`;
    case 'season-inferred':
      return 'humidity was not read often enough, so the season was inferred from the strings themselves';
  }
}

function rate(centsPerYear: number): string {
  return `${Math.abs(centsPerYear).toFixed(1)} cents a year`;
}

const MOST_NAMED = 6;

function names(pins: readonly GroundPin[]): string {
  const list = pins.slice(0, MOST_NAMED).map(({ midi, stringPosition, centsPerYear }) => {
    const string = stringPosition === 0 ? '' : ` string ${stringPosition}`;
    return `${midiToName(midi)}${string} (${centsPerYear.toFixed(1)} cents a year)`;
  });
  return list.join(', ') + (pins.length > MOST_NAMED ? ` and ${pins.length - MOST_NAMED} more` : '');
}
