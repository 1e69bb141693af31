import { formatInharmonicity, formatNumber, NOT_MEASURED } from '../../piano/format.ts';
import { formatWireMm } from '../../piano/formatStringing.ts';
import type { ScheduleRow } from '../../piano/stringingRecords.ts';
import type { ScaleOptions } from '../../stringing/scale/analyseScale.ts';
import { noteFigures } from '../../stringing/scale/noteFigures.ts';
import type { DiameterCheck } from '../../stringing/wireCheck/diameterFromB.ts';
import type { StringInharmonicity } from '../../stringing/wireCheck/measuredNotes.ts';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { Disclosure } from '../../ui/Disclosure.tsx';
import { texts } from '../../ui/texts.ts';
import { stringName } from './measuredB.ts';
import { inharmonicityText } from './scaleChart.ts';

const words = texts.stringing.measured;

type Line = {
  readonly key: string;
  readonly string: string;
  readonly measured: string;
  readonly expected: string;
  readonly ratio: string;
  readonly wire: string;
  readonly verdict: string;
};

const COLUMNS: readonly Column<Line>[] = [
  { key: 'string', title: words.columns.string, isRowHeader: true, cell: ({ string }) => string },
  { key: 'measured', title: words.columns.measured, isNumber: true, cell: ({ measured }) => measured },
  { key: 'expected', title: words.columns.expected, isNumber: true, cell: ({ expected }) => expected },
  { key: 'ratio', title: words.columns.ratio, isNumber: true, cell: ({ ratio }) => ratio },
  { key: 'wire', title: words.columns.wire, isNumber: true, cell: ({ wire }) => wire },
  { key: 'verdict', title: words.columns.verdict, cell: ({ verdict }) => verdict },
];

type Props = {
  readonly rows: readonly ScheduleRow[];
  readonly measured: readonly StringInharmonicity[];
  readonly check: DiameterCheck;
  readonly options: ScaleOptions;
};

/** The chart's numbers, for reading out and for copying. */
export function MeasuredTable(props: Props) {
  if (props.measured.length === 0) return null;
  return (
    <Disclosure summary={words.table} isMadeWhenOpened>
      <DataTable
        caption={words.caption}
        columns={COLUMNS}
        rows={linesOf(props)}
        rowKey={({ key }) => key}
        stacksWhenNarrow
      />
    </Disclosure>
  );
}

function linesOf({ rows, measured, check, options }: Props): Line[] {
  return measured.map(({ midi, stringPosition, inharmonicityB, inharmonicityBStandardUncertainty }) => {
    const row = rows.find((one) => one.midi === midi);
    const judged = check.known
      ? check.strings.find((one) => one.midi === midi && one.stringPosition === stringPosition)
      : undefined;
    return {
      key: `${midi} ${stringPosition}`,
      string: stringName(midi, stringPosition),
      measured: formatInharmonicity(inharmonicityB, inharmonicityBStandardUncertainty),
      expected: row ? inharmonicityText(noteFigures(row, options.pitchStandardHz, options.ownGrades)) : NOT_MEASURED,
      ratio: judged ? formatNumber(judged.ratioToOthers, 2) : NOT_MEASURED,
      wire: formatWireMm(row?.wireDiameterMm ?? null),
      verdict: words.verdicts[judged?.verdict ?? 'not judged'],
    };
  });
}
