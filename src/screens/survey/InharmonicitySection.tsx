import { formatPower } from '../../piano/format.ts';
import type { Instrument } from '../../piano/instrument.ts';
import type { SurveyInharmonicity } from '../../survey/surveyCurves.ts';
import { breakMarks } from '../../ui/breakMarks.ts';
import { logScale } from '../../ui/chartScale.ts';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { NotesFigure } from '../../ui/NotesFigure.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { CurveTable } from './CurveTable.tsx';
import { valuesDrawn } from './curveSeries.ts';
import {
  inharmonicityCurve,
  inharmonicityRows,
  inharmonicitySeries,
  notMeasuredSentence,
  spreadSentence,
  standingOutSentence,
} from './inharmonicityChart.ts';

const words = texts.charts.inharmonicity;

type Props = {
  readonly instrument: Instrument;
  readonly inharmonicity: SurveyInharmonicity | null;
  /** Notes with a kept take. */
  readonly heardMidi: readonly number[];
};

export function InharmonicitySection({ instrument, inharmonicity, heardMidi }: Props) {
  if (!inharmonicity)
    return (
      <Section title={words.title}>
        <EmptyState>
          <p>{words.tooFew}</p>
        </EmptyState>
      </Section>
    );
  const series = inharmonicitySeries(inharmonicity);
  const curve = inharmonicityCurve(inharmonicity);
  const standing = standingOutSentence(inharmonicity);
  const notMeasured = notMeasuredSentence(inharmonicity, heardMidi);
  return (
    <Section title={words.title} note={words.note}>
      <p>
        {standing} {series.length > 1 && words.meaning}
      </p>
      <NotesFigure
        axisTitle={words.axisTitle}
        name={words.title}
        column="inharmonicity_b"
        summary={words.summary(inharmonicity.notes.length, standing)}
        series={series}
        curve={curve}
        scale={logScale(valuesDrawn(series, curve))}
        compass={instrument.compass}
        marks={breakMarks(instrument)}
        formatTick={formatPower}
      />
      <p>
        {spreadSentence(inharmonicity)} {notMeasured}
      </p>
      <CurveTable
        caption={words.caption}
        measuredTitle={words.measuredB}
        curveTitle={words.curveB}
        rows={inharmonicityRows(inharmonicity, heardMidi)}
      />
    </Section>
  );
}
