import { useMemo, useState } from 'react';
import { formatNote, formatPitchStandard } from '../../piano/format.ts';
import { formatPull } from '../../piano/formatStringing.ts';
import type { Instrument } from '../../piano/instrument.ts';
import type { StringingSchedule } from '../../piano/stringingRecords.ts';
import type { WireGrade } from '../../piano/wireGrade.ts';
import type { ScaleFigures } from '../../stringing/scale/analyseScale.ts';
import { ChoiceField } from '../../ui/ChoiceField.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { FactList } from '../../ui/FactList.tsx';
import { TextField } from '../../ui/Field.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { CautionList } from './CautionList.tsx';
import { typedPitch } from './newSchedules.ts';
import { ScaleFigure } from './ScaleFigure.tsx';
import { ScaleTable } from './ScaleTable.tsx';
import { SectionTable } from './SectionTable.tsx';
import { scaleAt } from './scaleAt.ts';
import { breakingText } from './scaleChart.ts';
import { cautionSentences, jumpSentence, tablesSentence } from './scaleWords.ts';
import styles from './stringing.module.css';

const words = texts.stringing.scale;

type Props = {
  readonly instrument: Instrument;
  readonly schedule: StringingSchedule;
  readonly grades: readonly WireGrade[];
};

type PitchChoice = 'schedule' | '440' | '435' | 'other';
const PITCHES = (['schedule', '440', '435', 'other'] as const).map((value) => ({
  value,
  label: words.pitchChoices[value],
}));

export function ScaleSection({ instrument, schedule, grades }: Props) {
  const [choice, setChoice] = useState<PitchChoice>('schedule');
  const [other, setOther] = useState('');
  const pitchStandardHz = pitchOf(choice, other, schedule.pitchStandardHz);
  const scale = useMemo(
    () => scaleAt(schedule.rows, instrument, grades, pitchStandardHz),
    [schedule, instrument, grades, pitchStandardHz],
  );
  const isKnown = scale.notes.some(({ tensionN }) => tensionN !== null);
  return (
    <Section title={words.title} note={words.note}>
      {isKnown ? (
        <>
          <div className={styles.row}>
            <ChoiceField name="scale-pitch" label={words.pitch} value={choice} choices={PITCHES} onChange={setChoice} />
            {choice === 'other' && (
              <TextField
                id="scale-other-pitch"
                label={words.otherPitch}
                value={other}
                unit="Hz"
                isNumber
                onChange={setOther}
                error={
                  other !== '' && typedPitch(other) === undefined ? texts.stringing.schedules.pitchFault : undefined
                }
              />
            )}
          </div>
          <Totals scale={scale} schedule={schedule} instrument={instrument} grades={grades} />
          <CautionList sentences={cautionSentences(scale.cautions)} safety={words.cautions.safety} />
          <ScaleFigure instrument={instrument} rows={schedule.rows} scale={scale} grades={grades} />
          <Jumps scale={scale} />
          <SectionTable sections={scale.sections} />
          <ScaleTable scale={scale} />
          <p className={styles.quiet}>{words.assumptions}</p>
        </>
      ) : (
        <EmptyState>
          <p>{words.nothing}</p>
        </EmptyState>
      )}
    </Section>
  );
}

function pitchOf(choice: PitchChoice, other: string, ownHz: number): number {
  if (choice === 'schedule') return ownHz;
  return choice === 'other' ? (typedPitch(other) ?? ownHz) : Number(choice);
}

/** Standards that a total is told at beside the chosen one: today's, and the one that many old instruments were built for. */
const TOLD_PITCHES = [440, 435];

function Totals({ scale, schedule, instrument, grades }: Props & { readonly scale: ScaleFigures }) {
  const { total, notes, pitchStandardHz } = scale;
  if (!total) return null;
  const highest = notes.reduce((best, note) => ((note.breakingShare ?? 0) > (best.breakingShare ?? 0) ? note : best));
  const others = TOLD_PITCHES.filter((pitch) => pitch !== pitchStandardHz).map((pitch) => {
    const pull = scaleAt(schedule.rows, instrument, grades, pitch).total?.tensionN ?? 0;
    return words.atPitch(formatPitchStandard(pitch), formatPull(pull));
  });
  const strings = words.totalOf(words.strings(total.stringCount));
  return (
    <>
      <FactList
        facts={[
          {
            label: `${words.total} (${formatPitchStandard(pitchStandardHz)})`,
            value: `${formatPull(total.tensionN)}, ${strings}`,
          },
          { label: words.atPitches, value: others.join('; ') },
          ...(highest.breakingShare === null
            ? []
            : [{ label: words.highest, value: words.highestAt(breakingText(highest), formatNote(highest.midi)) }]),
        ]}
      />
      <p className={styles.quiet}>
        {total.unknownNoteCount > 0 && words.totalIncomplete(total.unknownNoteCount)} {words.usual}{' '}
        {tablesSentence(scale, grades)}
      </p>
    </>
  );
}

function Jumps({ scale: { steps } }: { readonly scale: ScaleFigures }) {
  const standing = steps.filter(({ standsOut }) => standsOut);
  return (
    <div className={styles.block}>
      <h3>{words.jumps.title}</h3>
      {standing.length === 0 ? (
        <p>{words.jumps.none}</p>
      ) : (
        <ul className={styles.list}>
          {standing.map((jump) => (
            <li key={jump.fromMidi}>
              <span aria-hidden="true">▲</span>
              {jumpSentence(jump)}
            </li>
          ))}
        </ul>
      )}
      <p className={styles.quiet}>{words.jumps.practice}</p>
    </div>
  );
}
