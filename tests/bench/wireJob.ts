/** One invented scale, its measured B, and what the judgement of diameters says of it. */
import { type DiameterCheck, diametersFromB } from '../../src/stringing/wireCheck/diameterFromB.ts';
import { type WireCase, type WirePlan, wireCase } from './wirePlans.ts';

export type WireJobResult = {
  readonly wrongMidis: readonly number[];
  /** Notes of which a string is pointed out, each once. */
  readonly namedMidis: readonly number[];
  /** Of the wrong notes pointed out: how many with their true size. */
  readonly sizedCount: number;
  readonly noteCount: number;
  /**
   * What one who knew this piano's own curve and the errors' size would see: the least of the wrong notes' departures and the
   * largest of the others', in sigmas of the error.
   */
  readonly leastWrongSigmas: number;
  readonly largestRightSigmas: number;
  readonly told: readonly string[];
};

export function wireJob(plan: WirePlan): WireJobResult {
  const made = wireCase(plan);
  const { stated, measured, strutsAfterMidi, wrong } = made;
  const check = diametersFromB(stated, measured, { pitchStandardHz: 440, bassBridgeTopMidi: null, strutsAfterMidi });
  const named = accused(check);
  const sized = named.filter(
    ({ midi, fittingGauge }) => Math.abs((fittingGauge?.diameterMm ?? 0) - (wrong.get(midi) ?? 9)) < SAME_SIZE_MM,
  );
  return {
    wrongMidis: [...wrong.keys()],
    namedMidis: [...new Set(named.map(({ midi }) => midi))],
    sizedCount: new Set(sized.map(({ midi }) => midi)).size,
    noteCount: stated.length,
    ...visibleSigmas(made, plan.wrongIn),
    told: toldOf(check, made),
  };
}

const SAME_SIZE_MM = 0.004;

function accused(check: DiameterCheck) {
  return check.known
    ? check.strings.filter(({ verdict }) => verdict === 'does-not-fit' || verdict === 'nothing-fits')
    : [];
}

/** A slip moves all strings of a note alike, a wrong wire some of them: there the one farthest off counts. */
function visibleSigmas({ departures, wrong }: WireCase, wrongIn: WirePlan['wrongIn']) {
  const byNote = new Map<number, number[]>();
  for (const { midi, sigmas } of departures) byNote.set(midi, [...(byNote.get(midi) ?? []), sigmas]);
  const seen = (sigmas: readonly number[]) =>
    wrongIn === 'piano'
      ? Math.max(...sigmas.map(Math.abs))
      : Math.abs(sigmas.reduce((sum, one) => sum + one, 0)) / Math.sqrt(sigmas.length);
  const sizes = (isWrong: boolean) =>
    [...byNote].flatMap(([midi, sigmas]) => (wrong.has(midi) === isWrong ? [seen(sigmas)] : []));
  return { leastWrongSigmas: Math.min(...sizes(true)), largestRightSigmas: Math.max(...sizes(false)) };
}

function toldOf(check: DiameterCheck, { wrong, departures }: WireCase): string[] {
  if (!check.known) return [check.reason];
  return check.strings
    .filter(({ midi, probability }) => wrong.has(midi) || probability > 0.25)
    .map(({ midi, statedDiameterMm, departureInSigmas, probability, isOutOfRun }) => {
      const seen = departures.find((one) => one.midi === midi)?.sigmas ?? 0;
      const truth = wrong.has(midi) ? ` (true ${wrong.get(midi)})` : '';
      return `${midi} ${statedDiameterMm}${truth}: ${departureInSigmas.toFixed(1)} sigma (true ${seen.toFixed(1)}), probability ${probability.toFixed(2)}${isOutOfRun ? ', out of run' : ''}`;
    })
    .concat(`spread ${check.spread.toFixed(4)}`);
}
