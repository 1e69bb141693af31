/** The records of an instrument with what years of readings say of it: judged once, for every page that shows it. */
import { analyseDrift, type Drift } from '../stability/drift/analyseDrift.ts';
import { seededNormal } from '../stability/drift/seededNormal.ts';
import { historyOfRecords, type InstrumentHistory } from '../stability/historyOfRecords.ts';
import { JUDGEMENT_SEED } from '../stability/judgementSeed.ts';
import { slipThresholdOf } from '../stability/slipThreshold.ts';
import type { ReportRecords } from './reportRecords.ts';

export type JudgedRecords = ReportRecords & {
  readonly history: InstrumentHistory;
  readonly drift: Drift;
  readonly thresholdCentsPerYear: number;
};

export function judgeRecords(records: ReportRecords): JudgedRecords {
  const history = historyOfRecords(records);
  const thresholdCentsPerYear = slipThresholdOf(records.instrument);
  const drift = analyseDrift({ ...history, thresholdCentsPerYear, random: seededNormal(JUDGEMENT_SEED) });
  return withDrift(records, history, drift);
}

/** @param drift the judgement of this history, made elsewhere */
export function withDrift(records: ReportRecords, history: InstrumentHistory, drift: Drift): JudgedRecords {
  return { ...records, history, drift, thresholdCentsPerYear: slipThresholdOf(records.instrument) };
}
