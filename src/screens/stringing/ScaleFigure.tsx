import { useState } from 'react';
import type { Instrument } from '../../piano/instrument.ts';
import type { ScheduleRow } from '../../piano/stringingRecords.ts';
import type { WireGrade } from '../../piano/wireGrade.ts';
import type { ScaleFigures } from '../../stringing/scale/analyseScale.ts';
import { ChoiceField } from '../../ui/ChoiceField.tsx';
import { NotesFigure } from '../../ui/NotesFigure.tsx';
import { texts } from '../../ui/texts.ts';
import {
  DRAWN,
  type Drawn,
  drawnBands,
  drawnFigure,
  drawnScale,
  drawnText,
  drawnTick,
  scaleMarks,
  scaleSeries,
} from './scaleChart.ts';
import { tablesSentence } from './scaleWords.ts';
import styles from './stringing.module.css';

const words = texts.stringing.scale;
const CHOICES = DRAWN.map((value) => ({ value, label: words.drawnChoices[value] }));

type Props = {
  readonly instrument: Instrument;
  readonly rows: readonly ScheduleRow[];
  readonly scale: ScaleFigures;
  readonly grades: readonly WireGrade[];
};

/** One figure of the scale along the compass, as chosen. */
export function ScaleFigure({ instrument, rows, scale, grades }: Props) {
  const [drawn, setDrawn] = useState<Drawn>('tension');
  const series = scaleSeries(scale, drawn);
  const known = scale.notes.filter((note) => drawnFigure(note, drawn) !== null);
  const sorted = [...known].sort((a, b) => (drawnFigure(a, drawn) ?? 0) - (drawnFigure(b, drawn) ?? 0));
  const [lowest, highest] = [sorted[0], sorted.at(-1)];
  return (
    <>
      <ChoiceField name="scale-drawn" label={words.drawn} value={drawn} choices={CHOICES} onChange={setDrawn} />
      {lowest && highest ? (
        <NotesFigure
          axisTitle={words.axis[drawn]}
          name={words.drawnChoices[drawn]}
          column={words.columns[drawn]}
          summary={words.summary(
            words.drawnChoices[drawn],
            known.length,
            drawnText(lowest, drawn),
            drawnText(highest, drawn),
            scale.steps.filter(({ standsOut }) => standsOut).length,
          )}
          series={series}
          bands={drawnBands(drawn)}
          scale={drawnScale(
            series.flatMap(({ points }) => points.map(({ y }) => y)),
            drawn,
          )}
          compass={instrument.compass}
          marks={scaleMarks(instrument, rows)}
          formatTick={drawnTick(drawn)}
        />
      ) : (
        <p>{words.drawnNone[drawn]}</p>
      )}
      {drawn === 'breaking' && lowest && <p className={styles.quiet}>{tablesSentence(scale, grades)}</p>}
    </>
  );
}
