/** What every table is given. */
import type { BenchPool } from './benchPool.ts';
import type { Report } from './report.ts';

export type BenchSize = 'quick' | 'full';

export type Bench = {
  readonly size: BenchSize;
  readonly pool: BenchPool;
  readonly report: Report;
  /** A folder of its own for sound files, removed at the end. */
  readonly folder: string;
  readonly progress: (line: string) => void;
};

/** @example sized(bench, 4, 16) // 4 in a quick run, 16 in a full one */
export function sized({ size }: Pick<Bench, 'size'>, quick: number, full: number): number {
  return size === 'quick' ? quick : full;
}
