import { useState } from 'react';
import type { Instrument } from '../../piano/instrument.ts';
import { compareScales, type ScaleComparison } from '../../stringing/scale/compareScales.ts';
import { ChoiceField } from '../../ui/ChoiceField.tsx';
import { NotesFigure } from '../../ui/NotesFigure.tsx';
import { texts } from '../../ui/texts.ts';
import { CautionList } from './CautionList.tsx';
import { ComparisonFacts } from './ComparisonFacts.tsx';
import { ComparisonTables } from './ComparisonTables.tsx';
import { comparedNotes, comparisonSentences, comparisonSeries } from './comparisonRows.ts';
import { DRAWN, type Drawn, drawnBands, drawnScale, drawnTick, scaleMarks } from './scaleChart.ts';
import type { Strung } from './strung.ts';

const words = texts.stringing.compare;
const CHOICES = DRAWN.map((value) => ({ value, label: words.drawnChoices[value] }));

type Props = {
  /** Tells apart the fields of two comparisons on one page. */
  readonly id: string;
  readonly instrument: Instrument;
  readonly before: Strung;
  readonly planned: Strung;
};

/** What changes from one schedule to another: in all, in sections, note by note, and drawn. */
export function ComparisonView({ id, instrument, before, planned }: Props) {
  const comparison = compareScales(before.scale, planned.scale);
  const notes = comparedNotes(comparison, before.rows, planned.rows);
  return (
    <>
      <ComparisonFacts comparison={comparison} before={before} planned={planned} />
      <CautionList sentences={comparisonSentences(comparison)} safety={texts.stringing.scale.cautions.safety} />
      <ComparisonFigure
        id={id}
        instrument={instrument}
        comparison={comparison}
        before={before}
        planned={planned}
        changedCount={notes.filter(({ isDifferent }) => isDifferent).length}
      />
      <ComparisonTables comparison={comparison} notes={notes} />
    </>
  );
}

type FigureProps = Props & { readonly comparison: ScaleComparison; readonly changedCount: number };

function ComparisonFigure({ id, instrument, comparison, before, planned, changedCount }: FigureProps) {
  const [drawn, setDrawn] = useState<Drawn>('tension');
  const series = comparisonSeries(comparison, drawn, { before: before.name, planned: planned.name });
  const values = series.flatMap(({ points }) => points.map(({ y }) => y));
  return (
    <>
      <ChoiceField name={`${id}-drawn`} label={words.drawn} value={drawn} choices={CHOICES} onChange={setDrawn} />
      {values.length > 0 ? (
        <NotesFigure
          axisTitle={texts.stringing.scale.axis[drawn]}
          name={`${before.name} ${planned.name} ${words.drawnChoices[drawn]}`}
          column={texts.stringing.scale.columns[drawn]}
          summary={words.summary(before.name, planned.name, changedCount)}
          series={series}
          bands={drawnBands(drawn)}
          scale={drawnScale(values, drawn)}
          compass={instrument.compass}
          marks={scaleMarks(instrument, planned.rows)}
          formatTick={drawnTick(drawn)}
        />
      ) : (
        <p>{texts.stringing.scale.drawnNone[drawn]}</p>
      )}
    </>
  );
}
