import { startTransition, useEffect, useState } from 'react';
import type { Instrument, Take } from '../../piano/instrument.ts';
import { type SurveyCurves, surveyCurves } from '../../survey/surveyCurves.ts';
import type { SurveyToCurve } from '../../workers/driftMessages.ts';
import { openDrift } from '../../workers/openDrift.ts';

/**
 * The curves of a survey's kept takes, worked out off the page's thread; null until then.
 * @param kept the same object until something changes
 */
export function useSurveyCurves(
  { compass, bassBridgeTopMidi }: Instrument,
  kept: readonly Take[],
): SurveyCurves | null {
  const [found, setFound] = useState<{ kept: readonly Take[]; curves: SurveyCurves } | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the takes are read anew wherever the instrument is
  useEffect(() => {
    const survey: SurveyToCurve = {
      readings: kept.map(({ reading }) => curveReading(reading)),
      compass,
      bassBridgeTopMidi,
    };
    const show = (curves: SurveyCurves) => startTransition(() => setFound({ kept, curves }));
    const running = openDrift({ kind: 'curves', survey }, (report) => {
      if (report.kind === 'curves') show(report.curves);
    });
    running.ended.catch((error: unknown) => {
      console.info('The curves are worked out on the page, since its worker failed.', error);
      show(surveyCurves(survey.readings, compass, bassBridgeTopMidi));
    });
    return running.cancel;
  }, [kept]);
  return found?.kept === kept ? found.curves : null;
}

/** Without the partials, which are most of a reading. */
function curveReading(reading: Take['reading']): SurveyToCurve['readings'][number] {
  const { midi, stringPosition, inharmonicityB, inharmonicityBStandardUncertainty, lifeTimeS, quality } = reading;
  return {
    midi,
    stringPosition,
    inharmonicityB,
    inharmonicityBStandardUncertainty,
    lifeTimeS,
    quality: { isUsable: quality.isUsable },
  };
}
