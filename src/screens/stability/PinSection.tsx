import { memo } from 'react';
import { formatCentsValue, formatDate, formatNoteRange } from '../../piano/format.ts';
import { formatProbability, formatRateValue } from '../../piano/formatStability.ts';
import type { Drift } from '../../stability/drift/analyseDrift.ts';
import type { JudgedPin } from '../../stability/drift/judgedPin.ts';
import type { Outlier } from '../../stability/drift/outliers.ts';
import type { StringAddress } from '../../stability/driftViews.ts';
import { fastestPossibleSlip } from '../../stability/nextEvidence.ts';
import { Button } from '../../ui/Button.tsx';
import { ExportBar } from '../../ui/chartExport/ExportBar.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { Disclosure } from '../../ui/Disclosure.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { outlierWords } from './groundWords.ts';
import { judgementOf, notablePins, pinSheet, pinsInOrder, zoneSheet } from './pinRows.ts';
import { STRING_SECTION } from './StringSection.tsx';
import { type StringNamer, stringKey, stringNamer } from './stringNames.ts';

const words = texts.stability.pins;

type Props = { readonly drift: Drift; readonly onChoose: (string: StringAddress) => void };

/** Pins with their slips, the surest first; zones; readings set aside. */
export const PinSection = memo(function PinSection({ drift, onChoose }: Props) {
  const show = ({ midi, stringPosition }: StringAddress) => {
    onChoose({ midi, stringPosition });
    document.getElementById(STRING_SECTION)?.scrollIntoView({ block: 'start' });
  };
  const nameOf = stringNamer(drift.pins);
  const columns = pinColumns(nameOf, show);
  const notable = notablePins(drift.pins);
  return (
    <Section title={words.title} note={words.note}>
      <ZoneTable zones={drift.zones} />
      {notable.length === 0 ? (
        <p>{words.none}</p>
      ) : (
        <PinTable caption={words.caption} columns={columns} pins={notable} />
      )}
      <Disclosure summary={words.all(drift.pins.length)} isMadeWhenOpened>
        <PinTable caption={words.allCaption} columns={columns} pins={pinsInOrder(drift.pins)} />
      </Disclosure>
      <ExportBar name={words.title} sheet={() => pinSheet(drift.pins)} />
      {drift.outliers.length > 0 && (
        <Disclosure summary={words.outliers(drift.outliers.length)}>
          <DataTable
            caption={words.outliersCaption}
            isCaptionHidden
            columns={outlierColumns(nameOf)}
            rows={drift.outliers}
            rowKey={(row) => `${row.visitedOn} ${stringKey(row)}`}
            stacksWhenNarrow
          />
        </Disclosure>
      )}
    </Section>
  );
});

type PinTableProps = {
  readonly caption: string;
  readonly columns: readonly Column<JudgedPin>[];
  readonly pins: readonly JudgedPin[];
};

function PinTable({ caption, columns, pins }: PinTableProps) {
  return <DataTable caption={caption} columns={columns} rows={pins} rowKey={stringKey} stacksWhenNarrow />;
}

function pinColumns(nameOf: StringNamer, show: (string: StringAddress) => void): Column<JudgedPin>[] {
  return [
    { key: 'string', title: words.string, isRowHeader: true, cell: nameOf },
    {
      key: 'rate',
      title: words.rate,
      isNumber: true,
      cell: ({ slip }) => formatRateValue(slip.centsPerYear, slip.standardUncertainty),
    },
    {
      key: 'probability',
      title: words.probability,
      isNumber: true,
      cell: ({ slip }) => formatProbability(slip.probability),
    },
    {
      key: 'ruledOut',
      title: words.ruledOut,
      isNumber: true,
      cell: ({ slip }) => formatRateValue(fastestPossibleSlip(slip)),
    },
    { key: 'judgement', title: words.judgement, cell: (pin) => words.judgements[judgementOf(pin)] },
    {
      key: 'show',
      title: words.more,
      cell: (pin) => (
        <Button look="quiet" label={words.showLabel(nameOf(pin))} onPress={() => show(pin)}>
          {words.show}
        </Button>
      ),
    },
  ];
}

function ZoneTable({ zones }: { readonly zones: Drift['zones'] }) {
  if (zones.length === 0) return <p>{words.noZone}</p>;
  return (
    <>
      <DataTable
        caption={words.zones}
        columns={ZONE_COLUMNS}
        rows={zones}
        rowKey={(zone) => `${zone.fromMidi} ${zone.toMidi}`}
        stacksWhenNarrow
      />
      <ExportBar name={words.zones} sheet={() => zoneSheet(zones)} />
    </>
  );
}

const ZONE_COLUMNS: readonly Column<Drift['zones'][number]>[] = [
  { key: 'notes', title: words.zone, isRowHeader: true, cell: (zone) => formatNoteRange(zone.fromMidi, zone.toMidi) },
  {
    key: 'rate',
    title: words.rate,
    isNumber: true,
    cell: (zone) => formatRateValue(zone.centsPerYear, zone.standardUncertainty),
  },
  {
    key: 'probability',
    title: words.probability,
    isNumber: true,
    cell: (zone) => formatProbability(zone.probability),
  },
  { key: 'growing', title: words.accelerating, cell: (zone) => (zone.isAccelerating ? words.yes : words.no) },
];

const outlierColumns = (nameOf: StringNamer): readonly Column<Outlier>[] => [
  { key: 'string', title: words.string, isRowHeader: true, cell: nameOf },
  { key: 'visit', title: words.visit, cell: (row) => formatDate(row.visitedOn) },
  { key: 'cents', title: words.cents, isNumber: true, cell: (row) => formatCentsValue(row.cents) },
  { key: 'why', title: words.why, cell: ({ because }) => outlierWords(because) },
];
