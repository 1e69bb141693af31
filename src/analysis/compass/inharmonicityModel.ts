/** The curve of log B over the compass, its parameters and what is known of them beforehand. */
import { BASS_ASYMPTOTE, TREBLE_ASYMPTOTE } from '../tone/typicalInharmonicity.ts';
import type { CurveModel, CurvePoint } from './curveModel.ts';
import type { SpreadPrior } from './curveSpread.ts';
import { bumpCentres, bumpHeights } from './slowDeparture.ts';

/**
 * How far instruments differ from the average asymptotes (one sigma, in log B and log B per note). Heights are counted where each
 * asymptote rules. Standing: chosen. The treble of the open recordings of a concert grand lies 0.12 below the average and the
 * slope differs by 0.004; doubling every eight semitones (R. W. Young, J. Acoust. Soc. Am. 24 (1952) 267–273) is 0.006 off. Basses
 * differ by a factor of two and more. With thirty notes the data outweigh all of it.
 */
const TREBLE = { ...TREBLE_ASYMPTOTE, centreMidi: 75, heightSigma: 0.2, slopeSigma: 0.006 };
const BASS = { ...BASS_ASYMPTOTE, centreMidi: 30, heightSigma: 0.7, slopeSigma: 0.02 };
/** The step in log B from the bass bridge to the long bridge: a third either way. Chosen. */
const STEP_SIGMA = 0.3;
/** What an instrument departs from the asymptotes by, slowly: about 0.12 in log B in all where bumps overlap. Chosen. */
const BUMP_SIGMA = 0.09;
const BUMPS = { spacingNotes: 8, lowestMidi: 20, highestMidi: 108 };
const BUMP_CENTRES = bumpCentres(BUMPS);

/**
 * Spread of log B from note to note. Standing: chosen. Half gauges of wire move B by 5 %, and lengths differ by a few millimetres;
 * on the open recordings of a concert grand neighbours scatter by 3 % in the middle and 10 % on wound strings.
 */
const USUAL_SPREAD = 0.05;
/** Wound strings commonly end about E2 (common practice); it matters only where the bass bridge's end is not known. */
export const USUAL_WOUND_TOP_MIDI = 40;

export function inharmonicityModel(bassBridgeTopMidi: number | null): CurveModel {
  const steps = bassBridgeTopMidi === null ? [] : [{ mean: 0, sigma: STEP_SIGMA }];
  const bumps = BUMP_CENTRES.map(() => ({ mean: 0, sigma: BUMP_SIGMA }));
  return {
    at: (midi, parameters) => pointAt(midi, parameters, bassBridgeTopMidi),
    priors: [...asymptotePriors(TREBLE), ...asymptotePriors(BASS), ...steps, ...bumps],
    spread: spreadPrior(bassBridgeTopMidi ?? USUAL_WOUND_TOP_MIDI),
  };
}

type Asymptote = typeof TREBLE;

function asymptotePriors({ slope, intercept, centreMidi, heightSigma, slopeSigma }: Asymptote) {
  return [
    { mean: slope * centreMidi + intercept, sigma: heightSigma },
    { mean: slope, sigma: slopeSigma },
  ];
}

function pointAt(midi: number, parameters: readonly number[], bassBridgeTopMidi: number | null): CurvePoint {
  const [trebleHeight = 0, trebleSlope = 0, bassHeight = 0, bassSlope = 0, ...rest] = parameters;
  const trebleNotes = midi - TREBLE.centreMidi;
  const bassNotes = midi - BASS.centreMidi;
  const treble = Math.exp(trebleHeight + trebleSlope * trebleNotes);
  const bass = Math.exp(bassHeight + bassSlope * bassNotes);
  const trebleShare = treble / (treble + bass);
  const bassShare = 1 - trebleShare;
  const steps = bassBridgeTopMidi === null ? [] : [midi <= bassBridgeTopMidi ? 1 : 0];
  const linear = [...steps, ...bumpHeights(BUMP_CENTRES, BUMPS.spacingNotes, midi)];
  return {
    value: Math.log(treble + bass) + linear.reduce((sum, height, index) => sum + height * (rest[index] ?? 0), 0),
    gradient: [trebleShare, trebleShare * trebleNotes, bassShare, bassShare * bassNotes, ...linear],
  };
}

function spreadPrior(woundTopMidi: number): SpreadPrior {
  return {
    usual: USUAL_SPREAD,
    worthNotes: 4,
    groupCount: 2,
    groupOf: (midi) => (midi <= woundTopMidi ? 0 : 1),
    groupWorthNotes: 6,
  };
}
