/** What the instrument is, for the head of the owner's page. */
import { noteCount } from '../piano/compass.ts';
import { formatDate, formatNoteRange } from '../piano/format.ts';
import type { Instrument } from '../piano/instrument.ts';
import type { ReportRecords } from './reportRecords.ts';
import type { ReportWords } from './words.ts';

export type Fact = { readonly label: string; readonly value: string };

export function pageSubtitle({ instrument, visits }: ReportRecords, words: ReportWords) {
  const { kinds, built, serial, compass } = words.instrument;
  const { lowestMidi, highestMidi } = instrument.compass;
  const parts = [
    kinds[instrument.kind],
    ...(instrument.builtYear === null ? [] : [built(instrument.builtYear)]),
    ...(instrument.serialNumber === '' ? [] : [serial(instrument.serialNumber)]),
    compass(formatNoteRange(lowestMidi, highestMidi), noteCount(instrument.compass)),
  ];
  const last = visits
    .map(({ visitedOn }) => visitedOn)
    .sort()
    .at(-1);
  return {
    subtitle: parts.join(' · '),
    asOf: last === undefined ? words.noVisitYet : words.upTo(formatDate(last, words.language)),
  };
}

export function instrumentFacts({ pinBlock }: Instrument, words: ReportWords): Fact[] {
  return filled([{ label: words.instrument.pinBlock, value: pinBlock }]);
}

export function ownerFacts({ ownerName, ownerAddress }: Instrument, words: ReportWords): Fact[] {
  return filled([
    { label: words.instrument.owner, value: ownerName ?? '' },
    { label: words.instrument.place, value: ownerAddress ?? '' },
  ]);
}

function filled(facts: readonly Fact[]): Fact[] {
  return facts.filter(({ value }) => value.trim() !== '');
}
