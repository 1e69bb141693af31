import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react';
import { MapDrawing } from './MapDrawing.tsx';
import styles from './NoteMap.module.css';
import { cellAt, type MapPlace, noteMapLayout } from './noteMapLayout.ts';
import type { NoteMapProps } from './noteMapProps.ts';
import { useWidthWhenNear } from './useWidth.ts';

/** Figures of notes (across) and visits (down) as coloured and patterned cells. A column is chosen by pointer or with the arrow keys. */
export function NoteMap(props: NoteMapProps) {
  const { label, columns, rowNames, chosenKey, onChoose, cellText, hint } = props;
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidthWhenNear(frame);
  const layout = noteMapLayout(width, columns.length, rowNames.length);
  const [pointed, setPointed] = useState<MapPlace | null>(null);
  const chosen = Math.max(
    0,
    columns.findIndex((column) => column.key === chosenKey),
  );
  const placeOf = (event: PointerEvent<HTMLDivElement>) => {
    const { left, top } = event.currentTarget.getBoundingClientRect();
    return cellAt(layout, event.clientX - left, event.clientY - top, columns.length, rowNames.length);
  };
  const choose = (index: number) => {
    const column = columns[Math.min(columns.length - 1, Math.max(0, index))];
    if (column) onChoose(column.key);
  };
  return (
    <>
      <div
        ref={frame}
        className={styles.map}
        style={{ minHeight: layout.height }}
        role="slider"
        tabIndex={0}
        aria-label={label}
        aria-valuemin={0}
        aria-valuemax={Math.max(0, columns.length - 1)}
        aria-valuenow={chosen}
        aria-valuetext={columns[chosen]?.name ?? ''}
        onKeyDown={(event) => moveByKey(event, chosen, columns.length, choose)}
        onPointerMove={(event) => setPointed(placeOf(event))}
        onPointerLeave={() => setPointed(null)}
        onPointerDown={(event) => choose(placeOf(event)?.column ?? chosen)}
      >
        {width > 0 && <MapDrawing {...props} layout={layout} chosen={chosen} />}
      </div>
      <p className={styles.readout}>{pointed && pointed.row >= 0 ? cellText(pointed) : hint}</p>
    </>
  );
}

function moveByKey(event: KeyboardEvent, chosen: number, columnCount: number, choose: (index: number) => void): void {
  const targets: Record<string, number> = {
    ArrowLeft: chosen - 1,
    ArrowDown: chosen - 1,
    ArrowRight: chosen + 1,
    ArrowUp: chosen + 1,
    PageDown: chosen - 12,
    PageUp: chosen + 12,
    Home: 0,
    End: columnCount - 1,
  };
  const target = targets[event.key];
  if (target === undefined) return;
  event.preventDefault();
  choose(target);
}
