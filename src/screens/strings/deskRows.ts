/** The strings of the desk: what is heard of each, what is suggested, what is decided. */
import { formatBeatRate, formatLevel } from '../../piano/format.ts';
import type { StringDecision } from '../../piano/stringingRecords.ts';
import { type Suggestion, suggestDecision } from '../../stringing/decisions/suggestDecision.ts';
import { currentDecisions } from '../../stringing/decisions/workList.ts';
import type { FalseBeat } from '../../stringing/falseBeats/falseBeatList.ts';
import { texts } from '../../ui/texts.ts';
import { BEATING, type HeardString, heardString } from './audibility.ts';
import { fromTheLowest, keyOf, nameOf, type StringPlace } from './stringKey.ts';
import type { BenchOfStrings, StringTake } from './stringReadings.ts';
import { concludedTrials, standingTrials } from './trialTakes.ts';

const words = texts.strings;

export type DeskRow = HeardString & {
  readonly key: string;
  readonly place: StringPlace;
  readonly name: string;
  readonly suggestion: Suggestion;
  readonly decision: StringDecision | null;
};

/** @param chosen the reading of each string; decided strings without one stand there too. From the lowest string up. */
export function deskRows(
  chosen: readonly StringTake[],
  allTakes: readonly StringTake[],
  bench: BenchOfStrings,
  failingPins: ReadonlySet<string> = new Set(),
): DeskRow[] {
  const decisions = decisionByString(bench.decisions);
  const tried = new Map([...bench.trials].map((trial) => [keyOf(trial), trial]));
  const standing = [...tried.values()].flatMap((trial) => standingTrials(bench.trials, bench.decisions, trial));
  const trials = concludedTrials(standing, allTakes);
  const readings = new Map(chosen.map(({ take }) => [keyOf(take), take.reading]));
  const places = new Map<string, StringPlace>();
  for (const { midi, stringPosition } of [...chosen.map(({ take }) => take), ...decisions.values(), ...bench.trials])
    places.set(keyOf({ midi, stringPosition }), { midi, stringPosition });
  return [...places]
    .map(([key, place]) => {
      const heard = heardString(readings.get(key));
      const concluded = trials.get(key);
      return {
        key,
        place,
        name: nameOf(place),
        ...heard,
        suggestion: suggestionOf(heard, concluded?.conclusion, failingPins.has(key)),
        decision: decisions.get(key) ?? null,
      };
    })
    .sort((a, b) => fromTheLowest(a.place, b.place));
}

/** The decision that counts. Of two on one day the one that is not done yet, since it was made after the other was carried out. */
export function decisionByString(decisions: readonly StringDecision[]): Map<string, StringDecision> {
  const inOrder = [...decisions].sort(
    (a, b) => a.decidedOn.localeCompare(b.decidedOn) || Number(a.doneOn === null) - Number(b.doneOn === null),
  );
  return new Map(currentDecisions(inOrder).map((decision) => [keyOf(decision), decision]));
}

export function suggestionOf(
  { audibility, falseBeat }: HeardString,
  trials: Parameters<typeof suggestDecision>[0]['trials'],
  pinFails: boolean,
): Suggestion {
  const isKnown = audibility !== 'missing' && audibility !== 'undecided';
  return suggestDecision({ ...(isKnown && { falseBeat }), ...(trials && { trials }), pinFails });
}

export type DeskFilter = 'beating' | 'open' | 'all';

/** Strings that beat, the most audible first; else from the lowest string up. */
export function filteredRows(rows: readonly DeskRow[], filter: DeskFilter): DeskRow[] {
  if (filter === 'all') return [...rows];
  const beating = rows
    .filter(({ audibility }) => BEATING.includes(audibility))
    .sort((a, b) => (b.falseBeat?.weight ?? 0) - (a.falseBeat?.weight ?? 0) || fromTheLowest(a.place, b.place));
  return filter === 'beating' ? beating : rows.filter(({ decision }) => decision === null);
}

export function reasonText({ reasons }: Suggestion): string {
  return reasons.map((reason) => words.reasons[reason]).join('; ');
}

/** What is heard, with the most audible partials. */
export function beatText(audibility: DeskRow['audibility'], falseBeat: FalseBeat | null, partialCount = 2): string {
  if (!falseBeat) return words.audible[audibility];
  const shown = falseBeat.partials
    .slice(0, partialCount)
    .map(({ partialNumber, rateHz, depthDb }) =>
      words.partialBeat(partialNumber, formatBeatRate(rateHz), formatLevel(depthDb)),
    );
  const more = falseBeat.partials.length - shown.length;
  return [words.audible[audibility], ...shown, ...(more > 0 ? [words.moreBeats(more)] : [])].join('; ');
}
