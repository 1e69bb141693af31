/**
 * Two strings coupled at the bridge, by integrating the equations of motion of their envelopes step by step.
 *
 * Equations: G. Weinreich, J. Acoust. Soc. Am. 62 (1977) 1474–1484. Near a common frequency the amplitudes a₁, a₂ of the two strings
 * follow da/dt = j·M·a with M = [[ζ, ζ], [ζ, ζ + 2ε]]; ε is half the mistuning in radians a second, ζ the motion of the bridge that
 * one string's force brings, Im ζ > 0 its resistance. The bridge radiates a₁ + a₂. Each string loses `ownDampingPerS` besides.
 */
export type CoupledPair = {
  readonly hz: number;
  /** The second string stands this much above the first when they do not touch the same bridge. */
  readonly mistuningHz: number;
  /** ζ in radians a second. */
  readonly reactance: number;
  readonly resistance: number;
  readonly ownDampingPerS: number;
  readonly amplitude: number;
  /** The hammer's blow on the second string, 1 = as on the first. */
  readonly secondBlow: number;
  readonly phase: number;
};

type State = readonly [re1: number, im1: number, re2: number, im2: number];

function slopeOf(pair: CoupledPair, [re1, im1, re2, im2]: State): State {
  const { reactance, resistance, ownDampingPerS } = pair;
  const twiceEpsilon = 2 * Math.PI * pair.mistuningHz;
  const [sumRe, sumIm] = [re1 + re2, im1 + im2];
  // j·ζ = j·(reactance + j·resistance), acting on the sum of both.
  const bridgeRe = -resistance * sumRe - reactance * sumIm;
  const bridgeIm = -resistance * sumIm + reactance * sumRe;
  return [
    bridgeRe - ownDampingPerS * re1,
    bridgeIm - ownDampingPerS * im1,
    bridgeRe - ownDampingPerS * re2 - twiceEpsilon * im2,
    bridgeIm - ownDampingPerS * im2 + twiceEpsilon * re2,
  ];
}

const along = (state: State, slope: State, step: number) =>
  state.map((value, i) => value + step * slope[i]!) as unknown as State;

/** One sample further by the classical Runge–Kutta rule. */
function nextState(pair: CoupledPair, state: State, step: number): State {
  const k1 = slopeOf(pair, state);
  const k2 = slopeOf(pair, along(state, k1, step / 2));
  const k3 = slopeOf(pair, along(state, k2, step / 2));
  const k4 = slopeOf(pair, along(state, k3, step));
  return state.map((value, i) => value + (step / 6) * (k1[i]! + 2 * k2[i]! + 2 * k3[i]! + k4[i]!)) as unknown as State;
}

/** Adds the pair's sound to `out` from `onsetIndex`. */
export function addCoupledPair(out: Float32Array, onsetIndex: number, sampleRateHz: number, pair: CoupledPair): void {
  let state: State = [pair.amplitude, 0, pair.amplitude * pair.secondBlow, 0];
  for (let n = onsetIndex; n < out.length; n++) {
    const angle = (2 * Math.PI * pair.hz * (n - onsetIndex)) / sampleRateHz + pair.phase;
    out[n]! += (state[0] + state[2]) * Math.cos(angle) - (state[1] + state[3]) * Math.sin(angle);
    state = nextState(pair, state, 1 / sampleRateHz);
  }
}
