import { useState } from 'react';
import { compassToText } from '../../piano/compass.ts';
import { formatNote } from '../../piano/format.ts';
import type { ScheduleId } from '../../piano/ids.ts';
import type { Instrument } from '../../piano/instrument.ts';
import type { StringingSchedule } from '../../piano/stringingRecords.ts';
import type { WireGrade } from '../../piano/wireGrade.ts';
import { newId } from '../../records/newId.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { Button } from '../../ui/Button.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import { ComparisonView } from './ComparisonView.tsx';
import { planOf } from './newSchedules.ts';
import { scaleAt } from './scaleAt.ts';
import { TryOutFields } from './TryOutFields.tsx';
import { triedSchedule } from './tryChange.ts';
import { changeWords, FIRST_TRY, readTry, type TryOutDraft } from './tryOutDraft.ts';

const words = texts.stringing.tryOut;

type Props = {
  readonly records: Records;
  readonly instrument: Instrument;
  readonly schedule: StringingSchedule;
  readonly schedules: readonly StringingSchedule[];
  readonly grades: readonly WireGrade[];
  readonly onMade: (id: ScheduleId) => void;
};

/** One change of some notes, and what it would do to the whole. */
export function TryOutSection({ records, instrument, schedule, schedules, grades, onMade }: Props) {
  const { compass } = instrument;
  const [draft, setDraft] = useState<TryOutDraft>(() => ({
    ...FIRST_TRY,
    from: formatNote(compass.lowestMidi),
    to: formatNote(compass.highestMidi),
  }));
  const [fault, setFault] = useState<WriteFailure | null>(null);
  const read = readTry(draft, compass, compassToText(compass));
  const tried = read.isSound ? triedSchedule(schedule, read.change) : null;
  const isChanged =
    tried !== null &&
    (tried.pitchStandardHz !== schedule.pitchStandardHz ||
      tried.rows.some((row) => row !== schedule.rows.find(({ midi }) => midi === row.midi)));
  const keep = async () => {
    if (!tried) return;
    const id = newId<ScheduleId>();
    const outcome = await records.saveSchedule(planOf(id, { ...tried, instrumentId: instrument.id }, schedules));
    setFault(outcome.written ? null : outcome);
    if (outcome.written) onMade(id);
  };
  const strung = (name: string, { rows, pitchStandardHz }: Pick<StringingSchedule, 'rows' | 'pitchStandardHz'>) => ({
    name,
    rows,
    scale: scaleAt(rows, instrument, grades, pitchStandardHz),
  });
  return (
    <Section title={words.title} note={words.note}>
      <TryOutFields
        draft={draft}
        fault={read.isSound ? null : read.fault}
        grades={grades}
        onChange={(change) => setDraft((before) => ({ ...before, ...change }))}
      />
      {tried && read.isSound && isChanged && (
        <>
          <ComparisonView
            id="try-out"
            instrument={instrument}
            before={strung(schedule.name, schedule)}
            planned={strung(words.triedName(changeWords(read.change)), tried)}
          />
          <WriteFault fault={fault} />
          <Button look="primary" onPress={() => void keep()}>
            {words.keep}
          </Button>
        </>
      )}
      {tried && !isChanged && <p>{words.nothing}</p>}
    </Section>
  );
}
