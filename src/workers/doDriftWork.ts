/** The drift worker's work, apart from the messages. */
import { analyseDrift } from '../stability/drift/analyseDrift.ts';
import { seededNormal } from '../stability/drift/seededNormal.ts';
import { JUDGEMENT_SEED } from '../stability/judgementSeed.ts';
import { whatIfTrial } from '../stability/whatIf.ts';
import type { DriftReport, DriftWork } from './driftMessages.ts';

/** Reports what it finds as it finds it; what goes wrong is a report, too. */
export function doDriftWork(work: DriftWork, report: (found: DriftReport) => void): void {
  try {
    if (work.kind === 'judge')
      report({ kind: 'judged', drift: analyseDrift({ ...work.history, random: seededNormal(JUDGEMENT_SEED) }) });
    else for (const seed of work.seeds) report({ kind: 'trial', trial: whatIfTrial(work.question, seed) });
    report({ kind: 'finished' });
  } catch (error) {
    report({ kind: 'failed', detail: error instanceof Error ? error.message : String(error) });
  }
}
