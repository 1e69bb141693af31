/** The records of an instrument with what years of readings say of it: judged once, for every page that shows it. */
import { analyseDrift, type Drift } from '../stability/drift/analyseDrift.ts';
import { seededNormal } from '../stability/drift/seededNormal.ts';
import { historyOfRecords, type InstrumentHistory } from '../stability/historyOfRecords.ts';
import { slipThresholdOf } from '../stability/slipThreshold.ts';
import type { ReportRecords } from './reportRecords.ts';

export type JudgedRecords = ReportRecords & {
  readonly history: InstrumentHistory;
  readonly drift: Drift;
  readonly thresholdCentsPerYear: number;
};

/** The judgement needs random numbers; a fixed seed gives the same judgement every time. */
const SEED = 20_260_101;

export function judgeRecords(records: ReportRecords): JudgedRecords {
  const history = historyOfRecords(records);
  const thresholdCentsPerYear = slipThresholdOf(records.instrument);
  const drift = analyseDrift({ ...history, thresholdCentsPerYear, random: seededNormal(SEED) });
  return { ...records, history, drift, thresholdCentsPerYear };
}
