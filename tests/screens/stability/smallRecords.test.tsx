import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import type { InstrumentId } from '../../../src/piano/ids.ts';
import { JudgedSections } from '../../../src/screens/stability/JudgedSections.tsx';
import { analyseDrift } from '../../../src/stability/drift/analyseDrift.ts';
import { seededNormal } from '../../../src/stability/drift/seededNormal.ts';
import { simulateHistory } from '../../../src/stability/simulateHistory.ts';
import { regularVisits, USUAL_CLIMATE, usualPlan } from '../../../src/stability/simulation/historyPlan.ts';
import { texts } from '../../../src/ui/texts.ts';
import { seededRandom } from '../../support/seededRandom.ts';

const words = texts.stability;
const instrument = {
  id: 'i' as InstrumentId,
  name: 'Practice room upright',
  kind: 'upright' as const,
  builtYear: null,
  serialNumber: '',
  compass: { lowestMidi: 21, highestMidi: 108 },
  bassBridgeTopMidi: null,
  strutsAfterMidi: [],
  pinBlock: '',
  remark: '',
  isDemonstration: false,
};

/** The page of an instrument with so many visits, as its first drawing stands. */
function pageOf(visitCount: number, isHumidityNoted = true): string {
  const climate = { ...USUAL_CLIMATE, unnotedShare: isHumidityNoted ? 0 : 1 };
  const plan = usualPlan({ visits: regularVisits('2024-03-01', visitCount, 6), climate });
  const { readings } = simulateHistory(plan, seededRandom(1));
  const place = { compass: instrument.compass, bassBridgeTopMidi: null, strutsAfterMidi: [] };
  const history = { readings, events: [], instrument: place, leftOut: { unusable: 2, 'string-unknown': 0 } };
  const drift = analyseDrift({ ...history, thresholdCentsPerYear: 1, random: seededNormal(1) });
  const page = { instrument, events: [], visitCount, history, torques: [] };
  return renderToStaticMarkup(<JudgedSections page={page} drift={drift} onThreshold={() => undefined} />);
}

describe('a small record', () => {
  it('of one visit says what the next one needs, and still foretells from what is usual', () => {
    const markup = pageOf(1);
    expect(markup).toContain(words.verdict.next['both-surveys']);
    expect(markup).toContain(words.empty.noInterval);
    expect(markup).toContain(words.forecast.climateAssumed);
    expect(markup).toContain(words.forecast.responseAssumed);
    expect(markup).not.toContain(words.map.label);
  });

  it('of two visits says how many more are needed, and shows the change that there is', () => {
    const markup = pageOf(2);
    expect(markup).toContain(words.verdict.next['more-intervals'](2));
    expect(markup).toContain(words.map.label);
    expect(markup).toContain(words.humidity.unknown);
  });

  it('without humidity asks for it', () => {
    expect(pageOf(5, false)).toContain(words.verdict.next['note-humidity']);
  });

  it('names what was left out', () => {
    expect(pageOf(1)).toContain(words.leftOut.unusable(2));
  });
});
