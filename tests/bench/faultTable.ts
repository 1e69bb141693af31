/** The browser killed at random moments: whether every reading that the screen had called kept is there afterwards. */
import {
  type FaultPlace,
  type FaultRun,
  killedImport,
  killedMigration,
  killedSurvey,
  SURVEY_FILE,
} from '../browser/support/faultRuns.ts';
import { chromiumHere } from '../browser/support/findChromium.ts';
import { serveFolder } from '../browser/support/serveFolder.ts';
import { type Bench, sized } from './bench.ts';
import { buildApp } from './buildApp.ts';

const KINDS = {
  'a survey': killedSurvey,
  'an archive brought in': killedImport,
  'a new version of the records': killedMigration,
};

export async function faultTable(bench: Bench): Promise<void> {
  const { report } = bench;
  report.heading('12  The browser killed in the middle of something');
  const chromiumPath = chromiumHere();
  if (chromiumPath === undefined) {
    report.remark('Left out: no Chromium was found. Install one, or set CHROME_PATH to its program file.');
    return;
  }
  const server = await serveFolder(await buildApp(bench.folder));
  const place = { chromiumPath, appUrl: server.url, surveyFile: SURVEY_FILE };
  try {
    const all: FaultRun[] = [];
    for (const [name, kill] of Object.entries(KINDS)) all.push(...(await killAgainAndAgain(bench, place, name, kill)));
    const faults = all.flatMap((run) => run.faults);
    report.limit({ what: `faults in ${all.length} kills`, measured: faults.length, unit: '', atMost: 0 });
    report.worst('Faults', faults);
  } finally {
    await server.close();
  }
}

async function killAgainAndAgain(
  bench: Bench,
  place: FaultPlace,
  name: string,
  kill: (place: FaultPlace, seed: number) => Promise<FaultRun>,
): Promise<FaultRun[]> {
  const runs: FaultRun[] = [];
  const count = sized(bench, 2, name === 'a survey' ? 34 : 33);
  for (let seed = 1; seed <= count; seed += 1) {
    bench.progress(`killed in ${name}: ${seed} of ${count}`);
    try {
      runs.push(await kill(place, seed));
    } catch (fault) {
      bench.report.remark(`Not carried out (${name}, seed ${seed}): ${String(fault).split('\n')[0]}`);
    }
  }
  const promised = runs.reduce((sum, run) => sum + run.promisedCount, 0);
  bench.report.table(
    ['killed in', 'times', 'promised or there before', 'faults', 'moments'],
    [[name, String(runs.length), String(promised), String(runs.flatMap((run) => run.faults).length), momentsOf(runs)]],
  );
  return runs;
}

function momentsOf(runs: readonly FaultRun[]): string {
  const distinct = [...new Set(runs.map(({ when }) => when))];
  return distinct.length <= 4 ? distinct.join('; ') : `${distinct.slice(0, 4).join('; ')}; …`;
}
