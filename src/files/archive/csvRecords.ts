/** The records of a CSV file that arrives in pieces, without holding more than a piece of it. */
import Papa from 'papaparse';
import { damaged } from './archiveFault.ts';

export type CsvRecords = {
  /** As a spreadsheet counts: the header is row 1. */
  readonly firstRow: number;
  readonly records: readonly (readonly string[])[];
};

/** A single record larger than this is a quotation mark that nobody closed. */
const LONGEST_RECORD = 1 << 24;

/** The byte order mark at the beginning of a file, which some programs write, is taken off. @throws {ArchiveFault} */
export async function* csvRecords(file: string, bytes: AsyncIterable<Uint8Array>): AsyncGenerator<CsvRecords> {
  const cutter = createCutter(file);
  let firstRow = 1;
  let newline: Newline | undefined;
  for await (const text of decoded(file, bytes, () => firstRow)) {
    const whole = cutter.add(text, firstRow);
    if (whole === '') continue;
    newline ??= newlineOf(whole);
    const records = parse(file, { text: whole, newline, firstRow });
    yield { firstRow, records };
    firstRow += records.length;
  }
  const rest = cutter.rest(firstRow);
  if (rest !== '')
    yield { firstRow, records: parse(file, { text: rest, newline: newline ?? newlineOf(rest), firstRow }) };
}

type Newline = '\r\n' | '\n';

/** By the end of the header. */
function newlineOf(text: string): Newline {
  return text[text.indexOf('\n') - 1] === '\r' ? '\r\n' : '\n';
}

async function* decoded(file: string, bytes: AsyncIterable<Uint8Array>, row: () => number): AsyncGenerator<string> {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let isFirst = true;
  try {
    for await (const piece of bytes) {
      if (isFirst && isUtf16(piece)) throw damaged(file, `is UTF-16; ${SAVE_AS_UTF8}`, 1);
      isFirst = false;
      yield decoder.decode(piece, { stream: true });
    }
    yield decoder.decode();
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    throw damaged(file, `is not UTF-8 from here on or a little later; ${SAVE_AS_UTF8}`, row());
  }
}

const SAVE_AS_UTF8 = 'save it as CSV in UTF-8';

function isUtf16([first, second]: Uint8Array): boolean {
  return (first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff) || first === 0 || second === 0;
}

/** Cuts after a line break that is not inside quotation marks. */
function createCutter(file: string) {
  let pending = '';
  let isQuoted = false;
  const notClosed = (row: number) =>
    damaged(file, 'a quotation mark is not closed, in this row or a little later', row);
  return {
    add(text: string, row: number): string {
      const cut = text.includes('"') || isQuoted ? cutQuoted(text) : text.lastIndexOf('\n') + 1;
      if (cut === 0) {
        pending += text;
        if (pending.length > LONGEST_RECORD) throw notClosed(row);
        return '';
      }
      const whole = pending + text.slice(0, cut);
      pending = text.slice(cut);
      return whole;
    },
    rest(row: number): string {
      if (isQuoted) throw notClosed(row);
      return pending;
    },
  };
  function cutQuoted(text: string): number {
    let cut = 0;
    for (let index = 0; index < text.length; index++) {
      const code = text.charCodeAt(index);
      if (code === QUOTE) isQuoted = !isQuoted;
      else if (code === LINE_FEED && !isQuoted) cut = index + 1;
    }
    return cut;
  }
}

const QUOTE = 0x22;
const LINE_FEED = 0x0a;

type ToParse = { readonly text: string; readonly newline: Newline; readonly firstRow: number };

function parse(file: string, { text, newline, firstRow }: ToParse): string[][] {
  const { data, errors } = Papa.parse<string[]>(text, { delimiter: ',', newline });
  const [error] = errors;
  if (error) throw damaged(file, 'a quotation mark stands in the wrong place', firstRow + (error.row ?? 0));
  const last = data.at(-1);
  if (last?.length === 1 && last[0] === '') data.pop();
  return data;
}
