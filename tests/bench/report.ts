/** What the bench prints: tables, what each is held to, and a summary at the end. */
import { textTable } from '../../src/cli/textTable.ts';

export type Limit = {
  readonly what: string;
  /** Undefined where there was nothing to measure: then the limit does not hold. */
  readonly measured: number | undefined;
  readonly unit: string;
  readonly atMost?: number;
  readonly atLeast?: number;
};

export type Report = {
  heading(text: string): void;
  table(titles: readonly string[], rows: readonly (readonly string[])[]): void;
  remark(text: string): void;
  /** Prints one line and puts it into the summary. */
  limit(limit: Limit): void;
  /** Up to ten lines of what went worst, so that it can be mended. */
  worst(title: string, lines: readonly string[]): void;
  summary(): void;
};

export function createReport(print: (text: string) => void): Report {
  const limits: Limit[] = [];
  return {
    heading: (text) => print(`\n${text}\n${'='.repeat([...text].length)}`),
    table(titles, rows) {
      const columns = titles.map((title, index) => ({
        title,
        align: isFigures(rows.map((row) => row[index] ?? '')) ? ('right' as const) : ('left' as const),
        text: (row: readonly string[]) => row[index] ?? '',
      }));
      print(`${textTable(columns, rows)}\n`);
    },
    remark: print,
    limit(limit) {
      limits.push(limit);
      print(
        `${holds(limit) ? 'HOLDS' : 'MISSED'}: ${limit.what}: ${measuredText(limit)} (wanted: ${wantedText(limit)})`,
      );
    },
    worst(title, lines) {
      if (lines.length === 0) return;
      print(
        `${title}:\n${lines
          .slice(0, MOST_WORST)
          .map((line) => `  ${line}\n`)
          .join('')}`,
      );
      if (lines.length > MOST_WORST) print(`  … and ${lines.length - MOST_WORST} more\n`);
    },
    summary() {
      print('\nSummary\n=======\n| what | measured | wanted | holds |\n|---|---:|---:|---|');
      for (const limit of limits)
        print(`| ${limit.what} | ${measuredText(limit)} | ${wantedText(limit)} | ${holds(limit) ? 'yes' : '**no**'} |`);
      print(`\n${limits.filter(holds).length} of ${limits.length} limits hold.`);
    },
  };
}

const MOST_WORST = 10;

export function holds({ measured, atMost = Infinity, atLeast = -Infinity }: Limit): boolean {
  return measured !== undefined && measured <= atMost && measured >= atLeast;
}

function measuredText({ measured, unit }: Limit): string {
  return `${figure(measured, 3)} ${unit}`.trim();
}

function wantedText({ unit, atMost, atLeast }: Limit): string {
  if (atMost !== undefined && atLeast !== undefined) return `${atLeast} to ${atMost} ${unit}`.trim();
  return (atMost === undefined ? `at least ${atLeast} ${unit}` : `at most ${atMost} ${unit}`).trim();
}

/** So many significant digits, and all that stand before the point. @example figure(0.01234) // '0.012' */
export function figure(value: number | null | undefined, digitCount = 2): string {
  if (value === null || value === undefined) return '–';
  if (value === 0 || !Number.isFinite(value)) return String(value);
  const decimals = Math.max(0, Math.min(7, digitCount - 1 - Math.floor(Math.log10(Math.abs(value)))));
  return value.toFixed(decimals);
}

/** Whole percent, a tenth near the ends where it matters. @example percent(99.6) // '99.6' */
export function percent(value: number | undefined): string {
  if (value === undefined) return '–';
  const isNearEnd = (value > 0 && value < 2) || (value > 98 && value < 100);
  return value.toFixed(isNearEnd ? 1 : 0);
}

function isFigures(cells: readonly string[]): boolean {
  return cells.every((cell) => /^[-+–\d. ]*$/.test(cell));
}
