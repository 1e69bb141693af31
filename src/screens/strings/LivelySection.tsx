import { useState } from 'react';
import { formatDate, formatDuration } from '../../piano/format.ts';
import type { SurveyId } from '../../piano/ids.ts';
import type { Instrument } from '../../piano/instrument.ts';
import { compareLives, livelyNotes } from '../../stringing/life/livelyNotes.ts';
import { breakMarks } from '../../ui/breakMarks.ts';
import { logScale } from '../../ui/chartScale.ts';
import { SelectField } from '../../ui/Field.tsx';
import { FieldRow } from '../../ui/FormPage.tsx';
import { NotesFigure } from '../../ui/NotesFigure.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { livelyCurve, livelySentences, livelySeries } from './livelyChart.ts';
import { chosenTakes, readingsOf, type StringTake, type SurveyChoice, surveyChoices } from './stringReadings.ts';
import styles from './strings.module.css';

const words = texts.strings.lively;
const NOTHING = '';

type Props = { readonly instrument: Instrument; readonly takes: readonly StringTake[] };

export function LivelySection({ instrument, takes }: Props) {
  const surveys = surveyChoices(takes);
  const [surveyId, setSurveyId] = useState<string>(() => fullest(surveys)?.survey.id ?? NOTHING);
  const [againstId, setAgainstId] = useState<string>(NOTHING);
  const readings = (id: string) => readingsOf(chosenTakes(takes, id as SurveyId));
  const notes = livelyNotes(readings(surveyId));
  const comparison = againstId === NOTHING ? null : compareLives(readings(againstId), readings(surveyId));
  const curve = livelyCurve(notes);
  const series = livelySeries(notes, comparison);
  const sentences = livelySentences(notes, comparison);
  const choices = surveys.map((choice) => ({ value: choice.survey.id as string, label: surveyName(choice) }));
  return (
    <Section title={words.title} note={words.note}>
      <FieldRow>
        <SelectField
          id="lively-survey"
          label={words.survey}
          value={surveyId}
          choices={choices}
          onChange={setSurveyId}
        />
        <SelectField
          id="lively-against"
          label={words.against}
          value={againstId}
          choices={[{ value: NOTHING, label: words.nothing }, ...choices.filter(({ value }) => value !== surveyId)]}
          onChange={setAgainstId}
        />
      </FieldRow>
      {notes.length === 0 || !curve ? (
        <p>{words.tooFewNotes}</p>
      ) : (
        <>
          {sentences.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
          <NotesFigure
            axisTitle={words.axisTitle}
            name={words.chart}
            column={words.column}
            summary={words.summary(notes.length, sentences.join(' '))}
            series={series}
            curve={curve}
            scale={logScale([...notes.map(({ lifeTimeS }) => lifeTimeS), ...curve.stretches.flat().map(({ y }) => y)])}
            compass={instrument.compass}
            marks={breakMarks(instrument)}
            formatTick={formatDuration}
          />
          <p className={styles.soft}>{words.practice}</p>
        </>
      )}
    </Section>
  );
}

/** The newest of those that have most strings. */
function fullest(surveys: readonly SurveyChoice[]): SurveyChoice | undefined {
  return surveys.reduce<SurveyChoice | undefined>(
    (best, one) => (best && best.count >= one.count ? best : one),
    undefined,
  );
}

export function surveyName({ survey, visit, count }: SurveyChoice): string {
  return texts.strings.surveyChoice(
    formatDate(visit.visitedOn),
    texts.common.stage[survey.stage],
    texts.common.strings[survey.strings],
    count,
  );
}
