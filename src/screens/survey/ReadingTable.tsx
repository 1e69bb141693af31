import {
  formatBeatRate,
  formatCentsUncertainty,
  formatCentsValue,
  formatInharmonicity,
  formatNote,
  NOT_MEASURED,
} from '../../piano/format.ts';
import type { Take } from '../../piano/instrument.ts';
import type { Beating } from '../../piano/reading.ts';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { StateMark } from '../../ui/StateMark.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './survey.module.css';

const words = texts.visit.survey;

const COLUMNS: readonly Column<Take>[] = [
  {
    key: 'note',
    title: words.note,
    isRowHeader: true,
    cell: (take) => <a href={routeToHref({ screen: 'take', takeId: take.id })}>{formatNote(take.midi)}</a>,
  },
  {
    key: 'string',
    title: words.string,
    hidesWhenNarrow: true,
    cell: (take) => texts.common.stringPosition[take.stringPosition],
  },
  {
    key: 'cents',
    title: words.cents,
    isNumber: true,
    cell: ({ reading }) => formatCentsValue(reading.offsetCents, reading.offsetStandardUncertaintyCents),
  },
  {
    key: 'uncertainty',
    title: words.uncertainty,
    isNumber: true,
    cell: ({ reading }) => formatCentsUncertainty(reading.offsetStandardUncertaintyCents),
  },
  {
    key: 'inharmonicity',
    title: words.inharmonicity,
    isNumber: true,
    hidesWhenNarrow: true,
    cell: ({ reading }) => formatInharmonicity(reading.inharmonicityB),
  },
  { key: 'beating', title: words.beating, hidesWhenNarrow: true, cell: ({ reading }) => beatingText(reading.beating) },
  { key: 'state', title: words.state, cell: (take) => <TakeState take={take} /> },
];

export function ReadingTable({ takes, caption }: { readonly takes: readonly Take[]; readonly caption: string }) {
  return <DataTable caption={caption} isCaptionHidden columns={COLUMNS} rows={takes} rowKey={(take) => take.id} />;
}

function beatingText({ kind, rateHz }: Beating): string {
  if (kind === 'none') return NOT_MEASURED;
  const name = texts.take.beatKinds[kind];
  return rateHz === null ? name : `${name}, ${formatBeatRate(rateHz)}`;
}

function TakeState({ take }: { readonly take: Take }) {
  const { faults, isUsable } = take.reading.quality;
  const state = isUsable ? 'kept' : 'doubtful';
  const why = faults.map((fault) => texts.take.faults[fault]).join(', ');
  return (
    <span className={styles.state}>
      <StateMark state={state} /> {isUsable ? texts.take.usable : texts.take.notUsable}
      {why && `: ${why}`}
    </span>
  );
}
