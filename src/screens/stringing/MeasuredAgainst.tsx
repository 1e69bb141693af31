import { useMemo } from 'react';
import { formatPower } from '../../piano/format.ts';
import { formatWireMm } from '../../piano/formatStringing.ts';
import type { Instrument } from '../../piano/instrument.ts';
import type { ScheduleRow, StringingSchedule } from '../../piano/stringingRecords.ts';
import type { WireGrade } from '../../piano/wireGrade.ts';
import { setCells } from '../../stringing/schedule/editSchedule.ts';
import { scheduleBreaks } from '../../stringing/schedule/scheduleRows.ts';
import { type DiameterCheck, diametersFromB, LEAST_CHECK_NOTES } from '../../stringing/wireCheck/diameterFromB.ts';
import type { StringInharmonicity } from '../../stringing/wireCheck/measuredNotes.ts';
import { Button } from '../../ui/Button.tsx';
import { logScale } from '../../ui/chartScale.ts';
import { NotesFigure } from '../../ui/NotesFigure.tsx';
import { texts } from '../../ui/texts.ts';
import { findingSentences } from './findingWords.ts';
import { MeasuredTable } from './MeasuredTable.tsx';
import {
  commonSentence,
  expectedCurve,
  findings,
  leftOutSentence,
  measuredSeries,
  offeredDiameterMm,
  valuesDrawn,
} from './measuredB.ts';
import { scaleMarks } from './scaleChart.ts';
import styles from './stringing.module.css';

const words = texts.stringing.measured;

type Props = {
  readonly instrument: Instrument;
  readonly schedule: StringingSchedule;
  readonly grades: readonly WireGrade[];
  readonly measured: readonly StringInharmonicity[];
  /** Of the visit: the strings sounded at it. */
  readonly pitchStandardHz: number;
  readonly onRows: (rows: readonly ScheduleRow[]) => void;
};

export function MeasuredAgainst(props: Props) {
  const { instrument, schedule, grades, measured, pitchStandardHz, onRows } = props;
  const { rows } = schedule;
  const options = useMemo(() => {
    const { bassBridgeTopMidi, strutsAfterMidi } = instrument;
    return { pitchStandardHz, ownGrades: grades, bassBridgeTopMidi, strutsAfterMidi };
  }, [instrument, grades, pitchStandardHz]);
  const check = useMemo(() => diametersFromB(rows, measured, options), [rows, measured, options]);
  return (
    <>
      <Findings check={check} rows={rows} onRows={onRows} />
      <Figure {...props} check={check} />
      <p className={styles.quiet}>
        {words.bars} {commonSentence(check)} {leftOutSentence(check)} {check.known && words.method}
      </p>
      <MeasuredTable rows={rows} measured={measured} check={check} options={options} />
    </>
  );
}

type FindingsProps = {
  readonly check: DiameterCheck;
  readonly rows: readonly ScheduleRow[];
  readonly onRows: (rows: readonly ScheduleRow[]) => void;
};

function Findings({ check, rows, onRows }: FindingsProps) {
  if (!check.known) return <p>{words.tooFew(LEAST_CHECK_NOTES)}</p>;
  const found = findings(check);
  if (found.length === 0) return <p>{words.fits(check.strings.length)}</p>;
  return (
    <ul className={styles.list}>
      {found.map((finding) => {
        const { midi, stringPosition } = finding;
        const length = rows.find((row) => row.midi === midi)?.speakingLengthMm ?? null;
        const diameterMm = offeredDiameterMm(check, finding);
        const take = () =>
          diameterMm !== null && onRows(setCells(rows, [{ midi, change: { wireDiameterMm: diameterMm } }]));
        return (
          <li key={`${midi} ${stringPosition}`}>
            <span aria-hidden="true">▲</span>
            <div className={styles.finding}>
              <p>{findingSentences(finding, length).join(' ')}</p>
              {diameterMm !== null && <Button onPress={take}>{words.use(formatWireMm(diameterMm))}</Button>}
            </div>
          </li>
        );
      })}
    </ul>
  );
}

function Figure({
  instrument,
  schedule,
  grades,
  measured,
  pitchStandardHz,
  check,
}: Props & { readonly check: DiameterCheck }) {
  const { rows } = schedule;
  const series = measuredSeries(measured, check);
  const curve = expectedCurve(rows, scheduleBreaks(rows, instrument), pitchStandardHz, grades);
  const values = valuesDrawn(series, curve);
  if (values.length === 0) return <p>{words.nothingDrawn}</p>;
  const found = findings(check).map((finding) => findingSentences(finding, null)[0] ?? '');
  return (
    <NotesFigure
      axisTitle={words.axis}
      name={words.chart}
      column="inharmonicity_b"
      summary={words.summary(measured.length, found.join(' '))}
      series={series}
      curve={curve}
      scale={logScale(values)}
      compass={instrument.compass}
      marks={scaleMarks(instrument, rows)}
      formatTick={formatPower}
    />
  );
}
