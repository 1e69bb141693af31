/** What new wire did and what is to come of it, in sentences. */
import { formatDate, formatSpreadCents } from '../../piano/format.ts';
import { formatSpeed } from '../../piano/formatStability.ts';
import { type NewWire, SETTLED_CENTS_PER_YEAR } from '../../report/newWire.ts';
import { texts } from '../../ui/texts.ts';

const words = texts.stability.newWire;

export function newWireSentences(wire: NewWire): string[] {
  return [words.since(formatDate(wire.since)), ...courseSentences(wire)];
}

function courseSentences(wire: NewWire): string[] {
  switch (wire.kind) {
    case 'not seen yet':
      return [words.notSeen];
    case 'first year': {
      const cents = formatSpreadCents(Math.abs(wire.movedCents));
      return [wire.movedCents > 0 ? words.roseSoFar(cents) : words.fellSoFar(cents), words.toCome];
    }
    case 'settling':
      return [...firstYear(wire.firstYearCents), words.falling(formatSpeed(wire.centsPerYear))];
    case 'settled':
      return [...firstYear(wire.firstYearCents), words.settled(formatSpeed(SETTLED_CENTS_PER_YEAR))];
  }
}

/** A first year in which the wire did not fall is weather, and not worth a word. */
function firstYear(cents: number | null): string[] {
  return cents === null || cents >= 0 ? [] : [words.firstYear(formatSpreadCents(Math.abs(cents)))];
}
