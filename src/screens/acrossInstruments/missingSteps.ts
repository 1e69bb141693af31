/** What each instrument still lacks before anything of it can be counted, and where it is entered. */
import { formatDate } from '../../piano/format.ts';
import type { Instrument } from '../../piano/instrument.ts';
import type { Route } from '../../ui/routes.ts';
import { texts } from '../../ui/texts.ts';
import type { HeldView } from './heldView.ts';
import { workWords } from './heldWords.ts';

const words = texts.held.missing;

export type MissingStep = {
  readonly key: string;
  readonly instrument: Instrument;
  readonly sentence: string;
  readonly action: string;
  readonly route: Route;
};

/** @param withoutWork instruments on which no work is entered that years could be counted from */
export function missingSteps(view: HeldView, withoutWork: readonly Instrument[]): MissingStep[] {
  return [...withoutWork.map(workStep), ...view.unjudged.map(visitStep), ...blockKindSteps(view)];
}

function workStep(instrument: Instrument): MissingStep {
  const route = { screen: 'instrument', instrumentId: instrument.id } as const;
  return { key: `${instrument.id} work`, instrument, sentence: words.work, action: words.enterWork, route };
}

function visitStep({ found: { instrument, job }, visitCount }: HeldView['unjudged'][number]): MissingStep {
  const what = workWords(job);
  return {
    key: `${instrument.id} ${job.doneOn} ${what}`,
    instrument,
    sentence: words.visits(what, formatDate(job.doneOn), visitCount),
    action: words.beginVisit,
    route: { screen: 'new-visit', instrumentId: instrument.id },
  };
}

function blockKindSteps({ instruments }: HeldView): MissingStep[] {
  return instruments
    .filter(({ pinBlockKind }) => pinBlockKind === undefined)
    .map((instrument) => ({
      key: `${instrument.id} block`,
      instrument,
      sentence: words.blockKind,
      action: words.enterBlockKind,
      route: { screen: 'edit-instrument', instrumentId: instrument.id },
    }));
}
