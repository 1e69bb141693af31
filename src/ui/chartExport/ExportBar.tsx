import { useState } from 'react';
import type { CsvSheet } from '../../files/csvTable.ts';
import { texts } from '../texts.ts';
import styles from './ExportBar.module.css';
import { saveFile } from './saveFile.ts';
import { speakingName } from './speakingName.ts';
import type { ChartOnPage } from './standaloneSvg.ts';

const words = texts.charts.saving;

export type ExportBarProps = {
  /** What the chart shows, for the file's name and for screen readers. */
  readonly name: string;
  readonly sheet: () => CsvSheet;
  /** Absent where there are only numbers. */
  readonly chart?: () => ChartOnPage | null;
};

type Format = 'svg' | 'png' | 'csv';

/** Saves a chart as a drawing or a picture, and its numbers as a table. */
export function ExportBar({ name, sheet, chart }: ExportBarProps) {
  const [fault, setFault] = useState<string | null>(null);
  const save = async (format: Format) => {
    try {
      setFault(null);
      const content = format === 'csv' ? await sheetFile(sheet()) : await pictureFile(format, chart?.() ?? null);
      saveFile(content, speakingName([pageSubject(), name], format));
    } catch (error) {
      setFault(words.fault(error instanceof Error ? error.message : String(error)));
    }
  };
  const formats: readonly Format[] = chart ? ['svg', 'png', 'csv'] : ['csv'];
  return (
    <fieldset className={styles.bar}>
      <legend className={styles.label}>{words.legend(name)}</legend>
      <span aria-hidden="true">{chart ? words.label : words.numbersLabel}</span>
      {formats.map((format) => (
        <button
          key={format}
          type="button"
          className={styles.format}
          title={words.hints[format]}
          onClick={() => void save(format)}
        >
          {words.formats[format]}
        </button>
      ))}
      {fault && (
        <span className={styles.fault} role="alert">
          {fault}
        </span>
      )}
    </fieldset>
  );
}

/** The screen's title stands before the product's name in the page's. */
export function pageSubject(): string {
  return document.title.split(' · ')[0] ?? '';
}

// Both are fetched when somebody saves a chart.
async function sheetFile(sheet: CsvSheet): Promise<Blob> {
  const { writeCsvTable } = await import('../../files/csvTable.ts');
  return new Blob([writeCsvTable(sheet)], { type: 'text/csv;charset=utf-8' });
}

async function pictureFile(format: 'svg' | 'png', chart: ChartOnPage | null): Promise<Blob> {
  if (!chart) throw new Error(words.notDrawn);
  const { standaloneSvg } = await import('./standaloneSvg.ts');
  const svg = standaloneSvg(chart);
  if (format === 'svg') return new Blob([svg.text], { type: 'image/svg+xml;charset=utf-8' });
  const { svgToPng } = await import('./svgToPng.ts');
  return await svgToPng(svg);
}
