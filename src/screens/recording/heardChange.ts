/** How far the note just heard moved since it was last read, and whether it left its neighbours. */
import { formatCents, formatDate, formatNumber } from '../../piano/format.ts';
import type { SurveyStage } from '../../piano/instrument.ts';
import type { NoteReading } from '../../piano/reading.ts';
import type { BaselineReading } from '../../stability/baselineReadings.ts';
import { changeBetween, changeOfString, type NoteChange } from '../../stability/change.ts';
import { departures } from '../../stability/changeDepartures.ts';
import type { SurveyBook } from '../../survey/surveyBook.ts';
import { lastHeardTake, statusesOf } from '../../survey/surveyProgress.ts';
import { texts } from '../../ui/texts.ts';
import type { ChangeBaseline } from './changeBaseline.ts';

export type HeardChange = Pick<NoteChange, 'changeCents' | 'standardUncertaintyCents'> & {
  /** When the string was read last, and at which stage. */
  readonly since: Pick<BaselineReading, 'visitedOn' | 'stage'>;
  /** How much further than its neighbours, where that is far beyond their scatter; null where it is not. */
  readonly strayCents: number | null;
  /** Another take of this string says the same. */
  readonly isConfirmed: boolean;
};

/** Two takes of one string agree within this. Chosen: some standard deviations of what one strike and the next differ by. */
const AGREES_WITHIN_CENTS = 1;

/**
 * Null where the last sound was no note, the take cannot be used, or the string was not read before. Strays are told for as-found
 * surveys alone: after tuning a string stands where the tuner put it.
 */
export function heardChange(
  book: SurveyBook,
  baseline: ChangeBaseline,
  stage: SurveyStage,
  bassBridgeTopMidi: number | null,
): HeardChange | null {
  const reading = book.lastNothing ? undefined : lastHeardTake(book)?.reading;
  const before = reading && baseline.find((candidate) => isSameString(candidate.reading, reading));
  if (!before || !reading.quality.isUsable) return null;
  const { changeCents, standardUncertaintyCents } = changeOfString(before.reading, reading);
  const alike = baseline.filter((other) => isSameSurvey(other, before)).map((other) => other.reading);
  const strayCents = stage === 'as-found' ? strayOf(reading, book, alike, bassBridgeTopMidi) : null;
  const { visitedOn, stage: readAs } = before;
  const since = { visitedOn, stage: readAs };
  return { changeCents, standardUncertaintyCents, since, strayCents, isConfirmed: isConfirmed(reading, book) };
}

/** What moved over the same time, in the same weather. */
function isSameSurvey(a: BaselineReading, b: BaselineReading): boolean {
  return a.visitedOn === b.visitedOn && a.stage === b.stage;
}

/** The take against the notes kept so far, itself in the place of its string. */
function strayOf(
  reading: NoteReading,
  book: SurveyBook,
  baseline: readonly NoteReading[],
  bassBridgeTopMidi: number | null,
): number | null {
  const kept = new Set(statusesOf(book).map((status) => status.keptTakeId));
  const others = book.takes
    .filter((take) => kept.has(take.id) && take.reading.quality.isUsable && !isSameString(take.reading, reading))
    .map((take) => take.reading);
  const changes = changeBetween(baseline, [...others, reading]).notes;
  const own = departures(changes, bassBridgeTopMidi).find((departure) => isSameString(departure, reading));
  return own?.standsOut ? own.departureCents : null;
}

function isConfirmed(reading: NoteReading, { takes }: SurveyBook): boolean {
  const own = takes.filter((take) => take.reading.quality.isUsable && isSameString(take.reading, reading));
  return own.some(
    (take) =>
      take.reading !== reading && Math.abs(take.reading.offsetCents - reading.offsetCents) < AGREES_WITHIN_CENTS,
  );
}

type OneString = Pick<NoteReading, 'midi' | 'stringPosition'>;

function isSameString(a: OneString, b: OneString): boolean {
  return a.midi === b.midi && a.stringPosition === b.stringPosition;
}

/** @example '−3.4 ± 0.1 cents, flatter than left on 2 March 2019' */
export function changeText(change: HeardChange): string {
  const words = texts.recording.change;
  const { changeCents, standardUncertaintyCents, since } = change;
  const isRead = Math.abs(changeCents) > Math.max(2 * standardUncertaintyCents, LEAST_WORTH_A_WORD_CENTS);
  const direction = !isRead ? words.asBefore : changeCents < 0 ? words.flatter : words.sharper;
  return `${formatCents(changeCents, standardUncertaintyCents)}, ${direction[since.stage]} ${formatDate(since.visitedOn)}`;
}

/** Below this a change is called none. Chosen: the least that the figures beside it show. */
const LEAST_WORTH_A_WORD_CENTS = 0.05;

/** One short line, empty where there is nothing to be told. */
export function strayText({ strayCents, isConfirmed }: HeardChange): string {
  if (strayCents === null) return '';
  const words = texts.recording.change;
  const size = formatNumber(Math.abs(strayCents), 0);
  const stray = strayCents < 0 ? words.strayFlat(size) : words.straySharp(size);
  return isConfirmed ? `${stray}${words.confirmed}` : `${stray}${words.again}`;
}
