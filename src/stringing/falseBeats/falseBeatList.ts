/**
 * Single strings that beat by themselves, from what is heard most to what is heard least.
 *
 * Weight of one partial's beat: the partial's amplitude over the loudest one's, times the beat's ratio, times how well its rate is heard.
 * Rates are heard best from about one to six a second: slower ones are let pass (half a beat a second is called inaudible in ordinary
 * work, a third of one good enough: practitioners), and they need time within the partial's life; faster ones turn to roughness. Common
 * practice put into figures; no published measure of how much a false beat disturbs was found. It sorts, and judges nothing.
 */
import type { NoteReading, PartialReading, StringPosition } from '../../piano/reading.ts';
import { medianOf } from '../../piano/robustStatistics.ts';
import { deepestBeat, depthToRatio, heardS } from './beatStrength.ts';

export type BeatingPartial = {
  readonly partialNumber: number;
  readonly rateHz: number;
  readonly rateStandardUncertaintyHz: number;
  readonly depthDb: number;
  /** Below the string's loudest partial: 0 or negative. */
  readonly levelDb: number;
  /** 0…1. */
  readonly weight: number;
};

export type FalseBeat = {
  readonly midi: number;
  readonly stringPosition: StringPosition;
  /** The largest of its partials' weights, 0…1. */
  readonly weight: number;
  /** Heaviest first. */
  readonly partials: readonly BeatingPartial[];
  /** What the rates along the partials look like. */
  readonly pattern: BeatPattern;
};

/**
 * `in-proportion`: rates grow with the partial number, as from a length that differs between two directions (loose bridge pin, string
 * not down at a termination) or from a neighbour that was not muted. `few-partials`: one or two partials only, as from a bridge that yields
 * differently near one frequency. `other`: neither.
 */
export type BeatPattern = 'in-proportion' | 'few-partials' | 'other';

export type FalseBeatList = {
  /** Heaviest first. */
  readonly beating: readonly FalseBeat[];
  /** Strings without a beat that would have been seen. */
  readonly cleanCount: number;
  /** Strings of which nothing can be said: takes not good enough, or tone too short. */
  readonly undecided: readonly { readonly midi: number; readonly stringPosition: StringPosition }[];
  /** Readings of whole unisons, which this does not judge. */
  readonly unisonCount: number;
};

const SLOW_HZ = 0.5;
const FAST_HZ = 10;
const EVEN_SHARE = 0.12;

/** @param readings the kept reading of every string */
export function falseBeatList(readings: readonly NoteReading[]): FalseBeatList {
  const single = readings.filter(({ stringPosition }) => stringPosition !== 0);
  const usable = single.filter(({ quality }) => quality.isUsable);
  const beating = usable.flatMap((reading) => falseBeatOf(reading) ?? []);
  const isBeating = new Set(beating.map(({ midi, stringPosition }) => `${midi}/${stringPosition}`));
  const quiet = single.filter(({ midi, stringPosition }) => !isBeating.has(`${midi}/${stringPosition}`));
  const clean = quiet.filter(({ quality, beating: { kind } }) => quality.isUsable && kind === 'none');
  return {
    beating: beating.sort((a, b) => b.weight - a.weight || a.midi - b.midi),
    cleanCount: clean.length,
    undecided: quiet
      .filter((reading) => !clean.includes(reading))
      .map(({ midi, stringPosition }) => ({ midi, stringPosition })),
    unisonCount: readings.length - single.length,
  };
}

/** Undefined where no partial of the string beats. */
export function falseBeatOf(reading: NoteReading): FalseBeat | undefined {
  const partials = beatingPartials(reading);
  const [heaviest] = partials;
  if (!heaviest) return undefined;
  const { midi, stringPosition } = reading;
  return { midi, stringPosition, weight: heaviest.weight, partials, pattern: patternOf(partials) };
}

function beatingPartials(reading: NoteReading): BeatingPartial[] {
  const loudest = Math.max(...reading.partials.map(({ levelDbfs }) => levelDbfs));
  return reading.partials
    .flatMap((partial) => {
      const beat = deepestBeat(partial);
      const levelDb = partial.levelDbfs - loudest;
      const { partialNumber } = partial;
      return beat ? [{ partialNumber, ...beat, levelDb, weight: weightOf(partial, reading.durationS, levelDb) }] : [];
    })
    .sort((a, b) => b.weight - a.weight);
}

function weightOf(partial: PartialReading, durationS: number, levelDb: number): number {
  const beat = deepestBeat(partial);
  if (!beat) return 0;
  const { rateHz, depthDb } = beat;
  const isNoticed = 1 / (1 + (SLOW_HZ / rateHz) ** 2);
  const isBeat = 1 / (1 + (rateHz / FAST_HZ) ** 4);
  const cycles = rateHz * heardS(partial, durationS);
  return 10 ** (levelDb / 20) * depthToRatio(depthDb) * isNoticed * isBeat * (cycles / (1 + cycles));
}

function patternOf(partials: readonly BeatingPartial[]): BeatPattern {
  if (partials.length < 3) return 'few-partials';
  const perPartial = partials.map(({ rateHz, partialNumber }) => rateHz / partialNumber);
  const middle = medianOf(perPartial);
  const even = perPartial.filter((rate) => Math.abs(rate / middle - 1) < EVEN_SHARE);
  return even.length >= Math.max(3, 0.7 * partials.length) ? 'in-proportion' : 'other';
}
