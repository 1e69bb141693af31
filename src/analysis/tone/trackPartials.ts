/**
 * All partials of a take: predict from what was found so far, look near the prediction, refit, go further out, until they sink
 * into the noise.
 */
import type { SpectralPeak } from '../signal/spectralPeaks.ts';
import type { NoteCandidate } from './findNote.ts';
import { fitInharmonicity, type InharmonicityFit, predictPartial } from './fitInharmonicity.ts';
import { withHiddenAftersound } from './hiddenAftersound.ts';
import { fitPartial, type PartialFit } from './partialFit.ts';
import { partialHz, typicalInharmonicity } from './typicalInharmonicity.ts';

export type Tone = {
  readonly partials: readonly PartialFit[];
  readonly fit: InharmonicityFit | undefined;
};

export type TrackRequest = {
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
  readonly startIndex: number;
  readonly endIndex: number;
  readonly candidate: NoteCandidate;
  readonly peaks: readonly SpectralPeak[];
};

const MOST_PARTIALS = 32;
const MOST_MISSES_IN_A_ROW = 5;
const HIGHEST_HZ = 15000;
/** Partials further below the loudest than this are left out: coding noise and phantoms live there. */
const FAINTEST_DB = 62;

/**
 * What is known of B beforehand. Treble strings are much alike in all pianos (R. W. Young, J. Acoust. Soc. Am. 24 (1952) 267–273), bass
 * strings not; the spreads of log B, 0.35 and 0.7, are chosen wide, so that they matter only where the partials say little.
 */
function priorOf(midi: number): Prior {
  const sigma = midi >= 64 ? 0.35 : Math.min(0.7, 0.35 + (0.35 * (64 - midi)) / 24);
  return { logB: Math.log(typicalInharmonicity(midi)), sigma };
}

export function trackPartials(request: TrackRequest): Tone {
  const { candidate } = request;
  const prior = priorOf(candidate.midi);
  let guess = refineOnPeaks(request, prior);
  let loudest = 0;
  const partials: PartialFit[] = [];
  let misses = 0;
  const ceilingHz = Math.min(HIGHEST_HZ, 0.45 * request.sampleRateHz);
  for (let n = 1; n <= MOST_PARTIALS && misses < MOST_MISSES_IN_A_ROW; n++) {
    const predicted = guess.predict(n);
    if (predicted.hz > ceilingHz) break;
    const partial = fitPartial(partialRequest(request, n, predicted, guess));
    const amplitude = partial?.components[0]?.amplitude ?? 0;
    loudest = Math.max(loudest, amplitude);
    const isFaint = amplitude < loudest * 10 ** (-FAINTEST_DB / 20);
    if (!partial || isFaint || diesLikeNoise(partial, partials.at(-1))) {
      if (predicted.hz > 80) misses++;
      continue;
    }
    misses = 0;
    partials.push(partial);
    guess = guessFrom(partials, guess, prior);
  }
  const uncertain = withHiddenAftersound(partials);
  const fit = partials.length >= 3 ? fitInharmonicity(asFrequencies(uncertain), guess, prior) : undefined;
  return { partials: uncertain, fit };
}

/** A burst of the blow's noise where a partial is looked for dies this many times faster than the partial before it. */
const DIES_FASTER = 4;

function diesLikeNoise(partial: PartialFit, before: PartialFit | undefined): boolean {
  if (!before || partial.components.length > 1) return false;
  return partial.components[0]!.dampingPerS > DIES_FASTER * before.components[0]!.dampingPerS + 4;
}

type Guess = {
  readonly f0Hz: number;
  readonly inharmonicityB: number;
  predict(partialNumber: number): { hz: number; standardUncertaintyHz: number };
};

type Prior = { readonly logB: number; readonly sigma: number };

function guessOf(fit: InharmonicityFit): Guess {
  return { f0Hz: fit.f0Hz, inharmonicityB: fit.inharmonicityB, predict: (n) => predictPartial(fit, n) };
}

/**
 * From the comb's cell to a fit over the spectrum's peaks, each good to a fraction of a bin. From below upwards, each matched
 * partial narrowing where the next may lie: in the treble B is known so badly beforehand that the third partial could be
 * any peak around.
 */
function refineOnPeaks(request: TrackRequest, prior: Prior): Guess {
  const { candidate, peaks } = request;
  let current = firstGuess(candidate, prior);
  for (let round = 0; round < 2; round++) {
    const matched: { partialNumber: number; hz: number; standardUncertaintyHz: number }[] = [];
    for (let n = 1; n <= Math.max(3, candidate.comb.highestPartial); n++) {
      const { hz, standardUncertaintyHz } = current.predict(n);
      const tolerance = Math.min(0.2 * current.f0Hz, Math.max(0.5, 0.004 * hz, 2.5 * standardUncertaintyHz));
      const near = peaks.filter((peak) => Math.abs(peak.hz - hz) < tolerance);
      // A peak twice as far off the expectation has to be much louder: a phantom sits at exactly twice the first partial.
      const merit = (peak: SpectralPeak) => peak.levelDbfs - 3 * ((peak.hz - hz) / standardUncertaintyHz) ** 2;
      const best = near.sort((a, b) => merit(b) - merit(a))[0];
      if (!best) continue;
      matched.push({ partialNumber: n, hz: best.hz, standardUncertaintyHz: 0.05 + 4e-4 * best.hz });
      const fit = fitInharmonicity(matched, current, prior);
      if (fit && round === 0) current = guessOf(fit);
    }
    const fit = fitInharmonicity(matched, current, prior);
    if (!fit) break;
    current = guessOf(fit);
  }
  return current;
}

/** Before anything is matched: f0 to a third of a percent, B as well as it is known beforehand. */
function firstGuess(candidate: NoteCandidate, prior: Prior): Guess {
  const { f0Hz, inharmonicityB } = candidate;
  return {
    f0Hz,
    inharmonicityB,
    predict: (n) => {
      const hz = partialHz(f0Hz, inharmonicityB, n);
      const bn2 = inharmonicityB * n * n;
      return { hz, standardUncertaintyHz: hz * Math.hypot(0.003, (0.5 * prior.sigma * bn2) / (1 + bn2)) };
    },
  };
}

function guessFrom(partials: readonly PartialFit[], guess: Guess, prior: Prior): Guess {
  const fit = partials.length >= 2 ? fitInharmonicity(asFrequencies(partials), guess, prior) : undefined;
  return fit ? guessOf(fit) : guess;
}

function asFrequencies(partials: readonly PartialFit[]) {
  return partials.map(({ partialNumber, hz, standardUncertaintyHz }) => ({ partialNumber, hz, standardUncertaintyHz }));
}

/** A partial may lie this far off the curve: the soundboard pushes the lowest ones about most. */
const LEAST_GATE = 0.006;
const LOW_PARTIAL_GATE = 0.012;

function partialRequest(
  request: TrackRequest,
  partialNumber: number,
  predicted: { hz: number; standardUncertaintyHz: number },
  guess: Guess,
) {
  const spacingHz = partialSpacingHz(guess, partialNumber);
  const share = partialNumber <= 3 ? LOW_PARTIAL_GATE : LEAST_GATE;
  const gateHz = Math.min(0.22 * spacingHz, Math.max(share * predicted.hz, 4 * predicted.standardUncertaintyHz, 0.4));
  return {
    samples: request.samples,
    sampleRateHz: request.sampleRateHz,
    startIndex: request.startIndex,
    endIndex: request.endIndex,
    partialNumber,
    predictedHz: predicted.hz,
    spacingHz,
    gateHz,
    leastRateHz: leastRateHz(request.candidate.midi),
  };
}

/** Distance between neighbouring partials at partial n: the derivative of n·f0·√(1 + B·n²). */
function partialSpacingHz(guess: { f0Hz: number; inharmonicityB: number }, n: number): number {
  const bn2 = guess.inharmonicityB * n * n;
  return (guess.f0Hz * (1 + 2 * bn2)) / Math.sqrt(1 + bn2);
}

/** Treble tones die fast: their subbands keep a higher rate. */
function leastRateHz(midi: number): number {
  return Math.min(240, Math.max(50, 50 * 2 ** ((midi - 80) / 12)));
}
