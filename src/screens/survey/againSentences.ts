/** What measuring a survey again came to, in words. */
import { formatChangeCents, formatNote, formatNotes } from '../../piano/format.ts';
import { texts } from '../../ui/texts.ts';
import type { AgainSummary } from './measureSurveyAgain.ts';

/** Smaller changes are not shown by the three decimals. */
const SHOWN_FROM_CENTS = 0.0005;

export function againSentences(summary: AgainSummary, wasStopped: boolean): string[] {
  const words = texts.sound.again;
  const { doneCount, notFoundMidi, faultyCount } = summary;
  return [
    wasStopped ? words.stopped(doneCount) : words.done(doneCount),
    ...changeSentence(summary),
    ...(notFoundMidi.length > 0 ? [words.notFound(formatNotes([...notFoundMidi].sort((a, b) => a - b)))] : []),
    ...(faultyCount > 0 ? [words.faulty(faultyCount)] : []),
  ];
}

function changeSentence({ largest }: AgainSummary): string[] {
  const words = texts.sound.again;
  if (!largest) return [];
  if (Math.abs(largest.changeCents) < SHOWN_FROM_CENTS) return [words.unchanged];
  return [words.most(formatChangeCents(largest.changeCents), formatNote(largest.midi))];
}
