import { useMemo, useState } from 'react';
import { formatCents, formatDate } from '../../piano/format.ts';
import type { Instrument } from '../../piano/instrument.ts';
import type { Drift } from '../../stability/drift/analyseDrift.ts';
import { driftMap, type MapKind, type StringAddress, type StringRow } from '../../stability/driftViews.ts';
import { ChoiceField } from '../../ui/ChoiceField.tsx';
import { ChartFigure, type LegendItem } from '../../ui/charts/ChartFigure.tsx';
import { divergingStep, LEVELS } from '../../ui/charts/divergingScale.ts';
import { MapMarkSign, MapSign } from '../../ui/charts/MapDrawing.tsx';
import { NoteMap } from '../../ui/charts/NoteMap.tsx';
import type { MapPlace } from '../../ui/charts/noteMapLayout.ts';
import { FieldRow } from '../../ui/FormPage.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import {
  levelMeaning,
  mapColumns,
  mapSheet,
  ofPosition,
  rowNames,
  shownIntervals,
  zoneBrackets,
} from './mapColumns.ts';
import { positionName, positionsOf, stringKey, stringNamer } from './stringNames.ts';

const words = texts.stability.map;

type Props = {
  readonly instrument: Instrument;
  readonly drift: Drift;
  readonly chosen: StringAddress | null;
  readonly onChoose: (string: StringAddress) => void;
};

const KINDS: readonly MapKind[] = ['added-up', 'each-interval'];

/** All strings (across) and all visits (down): what each string did by itself. */
export function MapSection({ instrument, drift, chosen, onChoose }: Props) {
  const [kind, setKind] = useState<MapKind>('added-up');
  const positions = positionsOf(drift.detail.strings);
  const position = chosen?.stringPosition ?? positions[0] ?? null;
  const rows = useMemo(() => ofPosition(driftMap(drift, kind), position), [drift, kind, position]);
  const shown = shownIntervals(rows, drift.intervals.length);
  const step = divergingStep(rows.flatMap((row) => row.cells.flatMap((cell) => cell?.cents ?? [])));
  const choose = (key: string) => {
    const row = rows.find((one) => stringKey(one) === key);
    if (row) onChoose({ midi: row.midi, stringPosition: row.stringPosition });
  };
  return (
    <Section title={words.title} note={words.note}>
      <FieldRow>
        <ChoiceField
          name="map-kind"
          label={words.kind}
          value={kind}
          choices={KINDS.map((value) => ({ value, label: words.kinds[value] }))}
          onChange={setKind}
        />
        {positions.length > 1 && (
          <ChoiceField
            name="map-strings"
            label={words.position}
            value={String(position)}
            choices={positions.map((one) => ({ value: String(one), label: positionName(one) }))}
            onChange={(value) => {
              const beside = nearestOf(drift.detail.strings, Number(value), chosen?.midi ?? 0);
              if (beside) onChoose(beside);
            }}
          />
        )}
      </FieldRow>
      <ChartFigure
        name={`${words.name} ${words.kinds[kind]}`}
        title={words.chartTitle}
        legend={legendOf(step)}
        sheet={() => mapSheet(rows, drift)}
      >
        <NoteMap
          label={words.label}
          columns={mapColumns(rows, shown, drift, instrument)}
          rowNames={rowNames(drift, shown)}
          step={step}
          chosenKey={chosen && stringKey(chosen)}
          onChoose={choose}
          brackets={zoneBrackets(drift, rows)}
          cellText={(place) => cellText(place, rows, shown, drift)}
          hint={words.hint}
        />
      </ChartFigure>
    </Section>
  );
}

/** The string of another position that stands nearest. */
function nearestOf(strings: readonly StringAddress[], position: number, midi: number): StringAddress | undefined {
  return strings
    .filter((one) => one.stringPosition === position)
    .map(({ midi: own, stringPosition }) => ({ midi: own, stringPosition }))
    .sort((a, b) => Math.abs(a.midi - midi) - Math.abs(b.midi - midi))[0];
}

const MARKS = ['flag', 'bracket', 'section'] as const;

function legendOf(step: number): LegendItem[] {
  const classes = LEVELS.map((level) => ({
    key: String(level),
    sign: <MapSign level={level} />,
    meaning: levelMeaning(level, step),
  }));
  const marks = MARKS.map((mark) => ({ key: mark, sign: <MapMarkSign mark={mark} />, meaning: words.marks[mark] }));
  return [...classes, ...marks];
}

function cellText(
  { column, row }: MapPlace,
  rows: readonly StringRow[],
  shown: readonly number[],
  { intervals, pins }: Drift,
): string {
  const string = rows[column];
  const k = shown[row];
  if (!string || k === undefined) return '';
  const visit = formatDate(intervals[k]?.toDate ?? '');
  const cell = string.cells[k];
  const name = stringNamer(pins)(string);
  if (!cell) return words.cellEmpty(name, visit);
  return words.cell(name, visit, formatCents(cell.cents, cell.standardUncertaintyCents));
}
