/** The reading that a take of an invented string gives: its partials, a little scattered as real ones are. */
import { hzToCents, uncertaintyHzToCents } from '../../piano/cents.ts';
import { midiToHz } from '../../piano/note.ts';
import type { Beating, NoteReading, PartialReading } from '../../piano/reading.ts';
import { type InventedString, partialNumbersHeard, promptDecayTimeS, slowDecayTimeS } from './inventedString.ts';
import type { SeededNumbers } from './seededNumbers.ts';

/** What the strike itself moves a string's pitch from one take to the next, in cents (louder is sharper). Chosen. */
const STRIKE_SCATTER_CENTS = 0.08;
const TAKE_LENGTH_S = 2.6;

export type Sounding = {
  /** Where the string stands: partial 1 in Hz, before the strike's own scatter. */
  readonly partial1Hz: number;
  readonly onsetS: number;
  readonly pitchStandardHz: number;
};

export function inventedReading(string: InventedString, sounding: Sounding, numbers: SeededNumbers): NoteReading {
  const struckHz = sounding.partial1Hz * 2 ** (numbers.normal(STRIKE_SCATTER_CENTS) / 1200);
  const f0Hz = Math.sqrt(struckHz ** 2 - string.stiffnessHz2);
  const inharmonicityB = string.stiffnessHz2 / f0Hz ** 2;
  const partials = partialNumbersHeard(string.midi).map((number) =>
    inventedPartial(
      string,
      { number, frequencyHz: number * f0Hz * Math.sqrt(1 + inharmonicityB * number ** 2) },
      numbers,
    ),
  );
  const first = partials[0]?.partialNumber === 1 ? partials[0] : undefined;
  const partial1Hz = first?.frequencyHz ?? struckHz;
  const partial1SigmaHz = first?.frequencyStandardUncertaintyHz ?? sigmaHz(string.midi, 1) / 2;
  const { midi } = string;
  return {
    midi,
    stringPosition: 2,
    onsetS: sounding.onsetS,
    durationS: TAKE_LENGTH_S,
    pitchStandardHz: sounding.pitchStandardHz,
    partial1Hz,
    partial1StandardUncertaintyHz: partial1SigmaHz,
    partial1Source: first ? 'measured' : 'fitted',
    ...inventedFit(midi, f0Hz, inharmonicityB, partials.length, numbers),
    offsetCents: hzToCents(partial1Hz, midiToHz(midi, sounding.pitchStandardHz)),
    offsetStandardUncertaintyCents: uncertaintyHzToCents(partial1SigmaHz, partial1Hz),
    partials,
    beating: inventedBeating(string),
    unisonStringsCents: null,
    lifeTimeS: slowDecayTimeS(midi, 1),
    quality: { snrDb: 46 - 0.12 * (midi - 21) + numbers.normal(2), isClipped: false, isUsable: true, faults: [] },
  };
}

type Fit = Pick<
  NoteReading,
  'f0Hz' | 'f0StandardUncertaintyHz' | 'inharmonicityB' | 'inharmonicityBStandardUncertainty'
>;

/** From two partials no inharmonicity is measured, as in a real survey. */
function inventedFit(midi: number, f0Hz: number, stiffness: number, partialCount: number, numbers: SeededNumbers): Fit {
  if (partialCount < 3)
    return { f0Hz: null, f0StandardUncertaintyHz: null, inharmonicityB: null, inharmonicityBStandardUncertainty: null };
  const spread = stiffness * (0.06 / partialCount ** 1.3);
  const f0SigmaHz = sigmaHz(midi, 1) / Math.sqrt(partialCount);
  return {
    f0Hz: f0Hz + numbers.normal(f0SigmaHz),
    f0StandardUncertaintyHz: f0SigmaHz,
    inharmonicityB: stiffness + numbers.normal(spread),
    inharmonicityBStandardUncertainty: spread,
  };
}

/** Standard uncertainty of a partial's frequency: a tenth of a cent or less up to the sixth octave, a third of a cent at the top. */
function sigmaHz(midi: number, partialNumber: number): number {
  const bass = 0.09 * Math.exp(-(midi - 21) / 12);
  const treble = 0.3 * Math.exp((midi - 108) / 11);
  const cents = (0.02 + bass + treble) * Math.sqrt(partialNumber);
  return (midiToHz(midi, 440) * partialNumber * cents * Math.LN2) / 1200;
}

type TruePartial = { readonly number: number; readonly frequencyHz: number };

function inventedPartial(string: InventedString, partial: TruePartial, numbers: SeededNumbers): PartialReading {
  const { number } = partial;
  const { midi, falseBeat } = string;
  const frequencyStandardUncertaintyHz = sigmaHz(midi, number);
  const frequencyHz = partial.frequencyHz + numbers.normal(frequencyStandardUncertaintyHz);
  const levelDbfs = -16 - 3.2 * (number - 1) - 0.06 * (midi - 21) + numbers.normal(2);
  const isBeating = falseBeat?.partialNumbers.includes(number) ?? false;
  const prompt = { frequencyHz, frequencyStandardUncertaintyHz, levelDbfs, decayTimeS: promptDecayTimeS(midi, number) };
  return {
    partialNumber: number,
    frequencyHz,
    frequencyStandardUncertaintyHz,
    levelDbfs,
    snrDb: levelDbfs + 70,
    promptDecayTimeS: prompt.decayTimeS,
    afterDecayTimeS: slowDecayTimeS(midi, number),
    beats: falseBeat && isBeating ? [falseBeat.beat] : [],
    components: falseBeat && isBeating ? [prompt, secondComponent(prompt, falseBeat.beat)] : [prompt],
  };
}

/** The weaker sound that makes a beat of this depth: amplitude ratio r gives 20·log10((1 + r)/(1 − r)) dB from peak to trough. */
function secondComponent(
  prompt: PartialReading['components'][number],
  beat: NonNullable<InventedString['falseBeat']>['beat'],
): PartialReading['components'][number] {
  const swing = 10 ** (beat.depthDb / 20);
  const ratio = (swing - 1) / (swing + 1);
  return {
    ...prompt,
    frequencyHz: prompt.frequencyHz + beat.rateHz,
    levelDbfs: prompt.levelDbfs + 20 * Math.log10(ratio),
  };
}

/** Above this note the tone is gone before a slow beat could show. */
const HIGHEST_ASSESSABLE_MIDI = 98;

function inventedBeating({ midi, falseBeat }: InventedString): Beating {
  if (falseBeat) {
    const { beat, partialNumbers } = falseBeat;
    const where =
      partialNumbers.length === 1
        ? `Partial ${partialNumbers[0]} beats`
        : `Partials ${partialNumbers.join(' and ')} beat`;
    const reason = `${where} and the others do not, on one string alone.`;
    return { kind: 'false beat', rateHz: beat.rateHz, depthDb: beat.depthDb, partialNumbers, reason };
  }
  const none = { rateHz: null, depthDb: null, partialNumbers: [] };
  if (midi > HIGHEST_ASSESSABLE_MIDI)
    return { kind: 'undetermined', ...none, reason: 'The tone is gone before a slow beat could show.' };
  return { kind: 'none', ...none, reason: 'No partial beats while it can be heard.' };
}
