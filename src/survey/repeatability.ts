/**
 * How well one strike of a string repeats the next: the scatter of partial 1 between takes of the same string, in cents.
 *
 * In a quiet room a fit is surer of its frequency than the string is: what a reading is worth is then what repeated strikes differ
 * by. Like is compared with like: takes of which partial 1 was found in the same way (measured, or predicted by the fit), and whose
 * level lies within 10 dB of the kept take's, since loudness moves pitch (measured by us: a median 0.5 cents between the loud and
 * the medium layer of one recorded concert grand, 24 of 30 notes the same way). What is stated is the standard deviation of a
 * single strike, as a kept reading is one.
 */
import type { NoteReading } from '../piano/reading.ts';

/** Takes whose levels differ by more are not compared. Chosen: about one step from medium to loud playing. */
export const LEVEL_REACH_DB = 10;
/** Fewer repeats than this, over all notes, give no pooled figure: it would be no surer than a single note's. Chosen. */
const LEAST_POOLED_REPEATS = 4;
/**
 * Takes of one string that differ by more cents than this, and by more than four times what their uncertainties allow, are not two
 * strikes of a string that stayed as it was: it was tuned in between, or one of them is wrong. They are left out of the pooled
 * figure. Chosen: several times what loudness alone does.
 */
const MOST_STRIKE_SCATTER_CENTS = 3;

/** The comparable takes of one string, the kept one among them. */
export type RepeatedStrikes = {
  readonly midi: number;
  readonly takeCount: number;
  /** Standard deviation of partial 1 from strike to strike. With two takes it is a rough figure. */
  readonly scatterCents: number;
  /** The takes disagree by more than strikes do. */
  readonly disagrees: boolean;
};

export type Register = 'bass' | 'middle' | 'treble';

/** Over several notes. A register with too few repeats of its own has none. */
export type PooledRepeatability = {
  readonly register: Register | 'all';
  readonly scatterCents: number;
  /** How many takes there were beyond the first of each note. */
  readonly repeatCount: number;
  readonly noteCount: number;
};

/**
 * Undefined unless at least two takes can be compared.
 * @param kept the reading that the record keeps
 * @param others the other takes of the same note and string; those that cannot be used are ignored
 */
export function repeatedStrikes(kept: NoteReading, others: readonly NoteReading[]): RepeatedStrikes | undefined {
  if (!kept.quality.isUsable) return undefined;
  const takes = [kept, ...others.filter((other) => isComparable(kept, other))];
  if (takes.length < 2) return undefined;
  const scatterCents = standardDeviation(takes.map(({ offsetCents }) => offsetCents));
  const allowedCents = Math.max(...takes.map(({ offsetStandardUncertaintyCents }) => offsetStandardUncertaintyCents));
  const disagrees = scatterCents > MOST_STRIKE_SCATTER_CENTS && scatterCents > 4 * allowedCents;
  return { midi: kept.midi, takeCount: takes.length, scatterCents, disagrees };
}

function isComparable(kept: NoteReading, other: NoteReading): boolean {
  if (!other.quality.isUsable || other.partial1Source !== kept.partial1Source) return false;
  const keptDbfs = takeLevelDbfs(kept);
  const otherDbfs = takeLevelDbfs(other);
  return keptDbfs !== null && otherDbfs !== null && Math.abs(keptDbfs - otherDbfs) <= LEVEL_REACH_DB;
}

/** Level of a take: its partials' powers together, relative to full scale. Null where no partial was measured. */
export function takeLevelDbfs({ partials }: Pick<NoteReading, 'partials'>): number | null {
  const power = partials.reduce((sum, { levelDbfs }) => sum + 10 ** (levelDbfs / 10), 0);
  return power > 0 ? 10 * Math.log10(power) : null;
}

function standardDeviation(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}

/**
 * Pooled over the notes, by register and over all: the root of the mean variance, each note counted by its repeats. Strings whose
 * takes disagree are left out. Empty with fewer than four repeats or only one note.
 */
export function pooledRepeatability(strikes: readonly RepeatedStrikes[]): PooledRepeatability[] {
  const sound = strikes.filter(({ disagrees }) => !disagrees);
  const registers: readonly Register[] = ['bass', 'middle', 'treble'];
  return [
    ...pooled('all', sound),
    ...registers.flatMap((register) =>
      pooled(
        register,
        sound.filter(({ midi }) => registerOf(midi) === register),
      ),
    ),
  ];
}

function pooled(register: PooledRepeatability['register'], strikes: readonly RepeatedStrikes[]): PooledRepeatability[] {
  const repeatCount = strikes.reduce((sum, { takeCount }) => sum + takeCount - 1, 0);
  if (repeatCount < LEAST_POOLED_REPEATS || strikes.length < 2) return [];
  const squares = strikes.reduce((sum, { takeCount, scatterCents }) => sum + (takeCount - 1) * scatterCents ** 2, 0);
  return [{ register, scatterCents: Math.sqrt(squares / repeatCount), repeatCount, noteCount: strikes.length }];
}

/** Bass up to B2, where partial 1 is weak; treble from C6, where the tone is short. Chosen. */
export function registerOf(midi: number): Register {
  return midi < 48 ? 'bass' : midi < 84 ? 'middle' : 'treble';
}

/**
 * What strikes of this note differ by: the pooled figure of its register (or of the whole survey), or its own scatter where that is
 * larger, as it is where its takes disagree.
 */
export function repeatabilityCents(strikes: RepeatedStrikes, pools: readonly PooledRepeatability[]): number {
  const register = registerOf(strikes.midi);
  const pool = pools.find((one) => one.register === register) ?? pools.find((one) => one.register === 'all');
  return Math.max(strikes.scatterCents, pool?.scatterCents ?? 0);
}
