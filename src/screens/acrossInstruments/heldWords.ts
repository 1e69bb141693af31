/** Jobs and what became of them, in words. */
import { formatDate, formatNoteRange, formatYears } from '../../piano/format.ts';
import type { PinBlockKind } from '../../piano/instrument.ts';
import type { HeldGroup, HeldJob } from '../../stability/acrossInstruments/heldGroups.ts';
import { type Job, WORK_KINDS } from '../../stability/acrossInstruments/jobs.ts';
import type { SpanRow } from '../../ui/held/spanRow.ts';
import { texts } from '../../ui/texts.ts';

const words = texts.held;

/** @example workWords({ kinds: ['block-work', 'restrung'], range: null }) // 'work on the block, restrung' */
export function workWords({ kinds, range }: Pick<Job, 'kinds' | 'range'>): string {
  const done = kinds.map((kind) => words.work[kind]).join(words.workAnd);
  return range ? `${done} ${words.noteRange(formatNoteRange(range.fromMidi, range.toMidi))}` : done;
}

export function blockWords(kind: PinBlockKind | null): string {
  return kind === null ? words.blockUnknown : texts.workshop.form.pinBlockKinds[kind];
}

export function groupWords({ key }: HeldGroup): string {
  if (key === '') return words.blockUnknown;
  const kinds = WORK_KINDS.filter((kind) => key.split('+').includes(kind));
  const text = kinds.length > 0 ? workWords({ kinds, range: null }) : blockWords(key as PinBlockKind);
  return text.charAt(0).toUpperCase() + text.slice(1);
}

export function endWords(job: HeldJob): string {
  const end = job.held.endState;
  if (end !== 'holding') return words.table.ended[end](formatDate(job.held.toOn));
  const { takenBackOn } = job.held;
  return takenBackOn === null ? words.table.held : words.table.takenBack(formatDate(takenBackOn));
}

export function spanRow(job: HeldJob): SpanRow {
  const { held, instrument } = job;
  return {
    key: jobKey(job),
    name: instrument.name,
    detail: words.spans.detail(workWords(held.job), formatYears(held.span.exitYears), endWords(job)),
    fromYears: held.span.entryYears,
    toYears: held.span.exitYears,
    end: held.endState,
  };
}

export function jobKey({ instrument, held }: HeldJob): string {
  return `${instrument.id} ${held.job.doneOn} ${workWords(held.job)}`;
}
