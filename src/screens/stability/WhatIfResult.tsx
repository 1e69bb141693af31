import { formatShare } from '../../piano/format.ts';
import { formatYearCount } from '../../piano/formatStability.ts';
import type { WhatIfSummary } from '../../stability/whatIf.ts';
import { ExportBar } from '../../ui/chartExport/ExportBar.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { texts } from '../../ui/texts.ts';
import { countOf, summarySentences, type WhatIfDraft } from './whatIfDraft.ts';

const words = texts.stability.whatIf;

type ByYear = WhatIfSummary['byYear'][number];

/** What was said of the invented pianos year by year. */
export function WhatIfResult({
  summary,
  fault,
}: {
  readonly summary: WhatIfSummary;
  readonly fault: WhatIfDraft['fault'];
}) {
  const { trialCount, byYear } = summary;
  return (
    <>
      <p>{summarySentences(summary, fault).join(' ')}</p>
      <DataTable
        caption={words.caption(trialCount)}
        columns={columnsOf(trialCount, fault)}
        rows={byYear}
        rowKey={(row) => String(row.years)}
        stacksWhenNarrow
      />
      <ExportBar
        name={words.name}
        sheet={() => ({
          columns: ['years', 'trials', 'found', 'named_share', 'warned', 'holding', 'sound_string_blamed'],
          rows: byYear.map((row) => [
            row.years,
            trialCount,
            row.foundShare * trialCount,
            row.namedShare,
            row.warnsShare * trialCount,
            row.holdsShare * trialCount,
            row.falseShare * trialCount,
          ]),
        })}
      />
    </>
  );
}

function columnsOf(trialCount: number, fault: WhatIfDraft['fault']): Column<ByYear>[] {
  const share = (key: keyof ByYear, title: string): Column<ByYear> => ({
    key,
    title,
    isNumber: true,
    cell: (row) => countOf(row[key], trialCount),
  });
  const years: Column<ByYear> = {
    key: 'years',
    title: words.years,
    isRowHeader: true,
    cell: (row) => formatYearCount(row.years),
  };
  const found = [
    share('foundShare', words.foundShare),
    {
      key: 'named',
      title: words.namedShare,
      isNumber: true,
      cell: (row: ByYear) => formatShare(row.namedShare),
    },
  ];
  const others = [
    share('warnsShare', words.warnsShare),
    share('holdsShare', words.holdsShare),
    share('falseShare', words.falseShare),
  ];
  return fault === 'none' ? [years, ...others] : [years, ...found, ...others];
}
