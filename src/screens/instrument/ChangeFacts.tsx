import { formatCents, formatHumidity, formatNote } from '../../piano/format.ts';
import { FactList } from '../../ui/FactList.tsx';
import { texts } from '../../ui/texts.ts';
import type { VisitChange } from './visitChanges.ts';

const words = texts.instrument.change;

/** The comparison in a few figures. */
export function ChangeFacts({ interval: { change, fromVisit, toVisit } }: { readonly interval: VisitChange }) {
  const largest = [...change.notes].sort((a, b) => Math.abs(b.changeCents) - Math.abs(a.changeCents))[0];
  const facts = [
    { label: words.median, value: formatCents(change.medianCents) },
    {
      label: words.humidityChange,
      value: words.humidityFromTo(formatHumidity(fromVisit.humidityPct), formatHumidity(toVisit.humidityPct)),
    },
    {
      label: words.largest,
      value: largest
        ? `${formatNote(largest.midi)}: ${formatCents(largest.changeCents, largest.standardUncertaintyCents)}`
        : texts.instrument.visits.none,
    },
    {
      label: words.compared,
      value: `${change.notes.length}${change.missing.length > 0 ? `, ${words.missing(change.missing.length)}` : ''}`,
    },
  ];
  return <FactList facts={facts} />;
}
