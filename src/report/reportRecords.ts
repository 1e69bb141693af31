/** What the pages for owners and colleagues are made from: the records of one instrument, and nothing that was typed for the page. */
import type { Instrument } from '../piano/instrument.ts';
import type { StringDecision } from '../piano/stringingRecords.ts';
import type { InstrumentRecords } from '../stability/historyOfRecords.ts';

/** A picture with its bytes as a `data:` address, so that the page needs nothing from outside. */
export type ReportPhotograph = {
  readonly id: string;
  readonly caption: string;
  /** ISO 8601 date and time; null where nobody knows. */
  readonly takenAt: string | null;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly dataUri: string;
};

export type ReportRecords = Omit<InstrumentRecords, 'instrument'> & {
  readonly instrument: Instrument;
  readonly decisions: readonly StringDecision[];
};
