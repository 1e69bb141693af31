/** What goes into an archive, and what the file is called. */
import type { LeftOut } from '../../files/archive/archiveContents.ts';
import type { InstrumentId } from '../../piano/ids.ts';
import type { Instrument } from '../../piano/instrument.ts';

export type ExportChoice = {
  /** Null: everything there is. */
  readonly instrumentIds: readonly InstrumentId[] | null;
  readonly leaveOut: readonly LeftOut[];
};

export const WHOLE: ExportChoice = { instrumentIds: null, leaveOut: [] };

/** Takes one thing out or puts it back in. */
export function withPart(choice: ExportChoice, part: LeftOut, isIn: boolean): ExportChoice {
  const others = choice.leaveOut.filter((left) => left !== part);
  return { ...choice, leaveOut: isIn ? others : [...others, part] };
}

/** @example archiveName([{ name: 'The attic upright' }], new Date(2026, 4, 3, 9, 5), 'records') // 'the-attic-upright-2026-05-03-0905.zip' */
export function archiveName(instruments: readonly Pick<Instrument, 'name'>[], now: Date, usual: string): string {
  const [only, ...others] = instruments;
  const name = only && others.length === 0 ? plainName(only.name) : '';
  return `${name === '' ? usual : name}-${localStamp(now)}.zip`;
}

/** Letters and digits that every file system takes. */
function plainName(name: string): string {
  const letters = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-');
  return letters.replace(/^-+|-+$/g, '').slice(0, 60);
}

function localStamp(now: Date): string {
  const two = (value: number) => String(value).padStart(2, '0');
  const date = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  return `${date}-${two(now.getHours())}${two(now.getMinutes())}`;
}
