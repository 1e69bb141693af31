import { formatBeatRate, formatHz, formatLevel, formatSeconds } from '../piano/format.ts';
import type { PartialReading } from '../piano/reading.ts';
import { type Column, DataTable } from './DataTable.tsx';
import { texts } from './texts.ts';

const words = texts.take;

const COLUMNS: readonly Column<PartialReading>[] = [
  { key: 'number', title: words.number, isRowHeader: true, cell: (partial) => partial.partialNumber },
  {
    key: 'frequency',
    title: words.frequency,
    isNumber: true,
    cell: (partial) => formatHz(partial.frequencyHz, partial.frequencyStandardUncertaintyHz),
  },
  { key: 'level', title: words.level, isNumber: true, cell: (partial) => formatLevel(partial.levelDbfs) },
  {
    key: 'prompt',
    title: words.promptDecay,
    isNumber: true,
    cell: (partial) => formatSeconds(partial.promptDecayTimeS),
  },
  { key: 'after', title: words.afterDecay, isNumber: true, cell: (partial) => formatSeconds(partial.afterDecayTimeS) },
  { key: 'beats', title: words.beats, cell: beatsText },
];

export function PartialTable({ partials }: { readonly partials: readonly PartialReading[] }) {
  if (partials.length === 0) return <p>{words.noPartials}</p>;
  return (
    <DataTable
      caption={words.partialsCaption}
      isCaptionHidden
      columns={COLUMNS}
      rows={partials}
      rowKey={(partial) => String(partial.partialNumber)}
      stacksWhenNarrow
    />
  );
}

function beatsText({ beats }: PartialReading): string {
  if (beats.length === 0) return words.noBeats;
  return beats.map((beat) => words.beatDepth(formatBeatRate(beat.rateHz), formatLevel(beat.depthDb))).join('; ');
}
