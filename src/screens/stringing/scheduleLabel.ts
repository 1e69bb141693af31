/** What a schedule is called where one is chosen. */
import { formatPitchStandard } from '../../piano/format.ts';
import type { StringingSchedule } from '../../piano/stringingRecords.ts';
import { texts } from '../../ui/texts.ts';

const words = texts.stringing.schedules;

/** A name that says the kind already does not hear it again. */
export function scheduleLabel({
  name,
  kind,
  pitchStandardHz,
}: Pick<StringingSchedule, 'name' | 'kind' | 'pitchStandardHz'>): string {
  const kindWord = words.kinds[kind];
  const saysKind = name.trim().toLowerCase() === kindWord.toLowerCase();
  return words.choice(name, [...(saysKind ? [] : [kindWord]), formatPitchStandard(pitchStandardHz)].join(', '));
}
