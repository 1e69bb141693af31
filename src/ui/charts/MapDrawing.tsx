import { useId } from 'react';
import { LEVELS, type Level, levelOf } from './divergingScale.ts';
import { MapPatterns, patternId } from './MapPatterns.tsx';
import styles from './NoteMap.module.css';
import { cellOutline, hasRoom, type NoteMapLayout, rowLabelStep } from './noteMapLayout.ts';
import type { NoteMapProps } from './noteMapProps.ts';

type DrawingProps = NoteMapProps & { readonly layout: NoteMapLayout; readonly chosen: number };

/** The cells with their notes, visits, flags and brackets. */
export function MapDrawing({ columns, rowNames, step, brackets, layout, chosen, chosenKey }: DrawingProps) {
  const prefix = useId();
  const { left, top, cellWidth, cellHeight, width, height } = layout;
  const bottom = top + rowNames.length * cellHeight;
  const xOf = (index: number) => left + index * cellWidth;
  const labelStep = rowLabelStep(layout);
  const levels = columns.map(({ values }) => values.map((value) => (value === null ? null : levelOf(value, step))));
  const ticked = columns.flatMap((column, index) => (column.tick ? [index] : []));
  const isRoomFor = (index: number) => hasRoom(ticked, index, cellWidth);
  return (
    <svg className={styles.drawing} width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      <MapPatterns prefix={prefix} />
      {rowNames.map((name, row) =>
        (rowNames.length - 1 - row) % labelStep === 0 ? (
          <text key={name} className={styles.rowName} x={left - 8} y={top + (row + 0.5) * cellHeight + 4}>
            {name}
          </text>
        ) : null,
      )}
      {LEVELS.map((level) => (
        <Cells key={level} level={level} prefix={prefix} outline={cellOutline(layout, levels, level)} />
      ))}
      {columns.map((column, index) => (
        <g key={column.key}>
          {column.tick && isRoomFor(index) && (
            <text className={styles.tick} x={xOf(index + 0.5)} y={bottom + 18}>
              {column.tick}
            </text>
          )}
          {column.isFlagged && <path className={styles.flag} d={`M${xOf(index + 0.5)} ${top - 3}l-4.5 -8h9z`} />}
          {column.endsSection && <path className={styles.section} d={`M${xOf(index + 1)} ${top - 4}V${bottom + 4}`} />}
        </g>
      ))}
      {brackets.map(({ fromKey, toKey }) => {
        const from = columns.findIndex((column) => column.key === fromKey);
        const to = columns.findIndex((column) => column.key === toKey);
        if (from < 0 || to < 0) return null;
        return <path key={fromKey} className={styles.bracket} d={`M${xOf(from)} ${top - 14}v-6H${xOf(to + 1)}v6`} />;
      })}
      {chosenKey !== null && columns.length > 0 && (
        <rect className={styles.chosen} x={xOf(chosen)} y={top} width={cellWidth} height={bottom - top} />
      )}
    </svg>
  );
}

type CellsProps = { readonly level: Level; readonly prefix: string; readonly outline: string };

/** All cells of a class in one outline: thousands of separate ones would make the page slow. */
function Cells({ level, prefix, outline }: CellsProps) {
  if (outline === '') return null;
  return (
    <>
      <path className={styles.cell} data-level={level} d={outline} />
      {level !== 0 && <path fill={`url(#${patternId(prefix, level)})`} d={outline} />}
    </>
  );
}

/** One class of the scale, for the legend. */
export function MapSign({ level }: { readonly level: Level }) {
  const prefix = useId();
  return (
    <svg className={styles.sign} viewBox="0 0 20 14" width={20} height={14} aria-hidden="true" focusable="false">
      <MapPatterns prefix={prefix} />
      <Cells level={level} prefix={prefix} outline="M0 0h20v14h-20z" />
    </svg>
  );
}

/** The signs above and between the columns, for the legend. */
export function MapMarkSign({ mark }: { readonly mark: 'flag' | 'bracket' | 'section' }) {
  return (
    <svg className={styles.sign} viewBox="0 0 20 14" width={20} height={14} aria-hidden="true" focusable="false">
      {mark === 'flag' && <path className={styles.flag} d="M10 11l-4.5 -8h9z" />}
      {mark === 'bracket' && <path className={styles.bracket} d="M2 12v-7H18v7" />}
      {mark === 'section' && <path className={styles.section} d="M10 1V13" />}
    </svg>
  );
}
