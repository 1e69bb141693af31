/** The drift worker's work, apart from the messages. */
import { analyseDrift } from '../stability/drift/analyseDrift.ts';
import { seededNormal } from '../stability/drift/seededNormal.ts';
import { JUDGEMENT_SEED } from '../stability/judgementSeed.ts';
import { whatIfTrial } from '../stability/whatIf.ts';
import { surveyCurves } from '../survey/surveyCurves.ts';
import type { DriftReport, DriftWork } from './driftMessages.ts';

/** Reports what it finds as it finds it; what goes wrong is a report, too. */
export function doDriftWork(work: DriftWork, report: (found: DriftReport) => void): void {
  try {
    for (const found of foundBy(work)) report(found);
    report({ kind: 'finished' });
  } catch (error) {
    report({ kind: 'failed', detail: error instanceof Error ? error.message : String(error) });
  }
}

function* foundBy(work: DriftWork): Generator<DriftReport> {
  switch (work.kind) {
    case 'judge':
      yield { kind: 'judged', drift: analyseDrift({ ...work.history, random: seededNormal(JUDGEMENT_SEED) }) };
      return;
    case 'what-if':
      for (const seed of work.seeds) yield { kind: 'trial', trial: whatIfTrial(work.question, seed) };
      return;
    case 'curves': {
      const { readings, compass, bassBridgeTopMidi } = work.survey;
      yield { kind: 'curves', curves: surveyCurves(readings, compass, bassBridgeTopMidi) };
    }
  }
}
