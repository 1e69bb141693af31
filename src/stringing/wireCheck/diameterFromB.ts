/**
 * Which plain strings do not have the wire that the schedule states, from their measured inharmonicity.
 *
 * Model: log of measured over expected B is what many strings have in common (stiffnessTrend.ts) and, on one string, 2·log of true over
 * stated diameter: half a gauge is 5 %, a whole one 10 %. Judged note by note against what all others have in common, so that a
 * wrong Young's modulus or lengths measured to the wrong edge accuse nobody. A wrong length looks like a wrong diameter (B goes with
 * 1/L⁴), so the length that would do the same is given beside it. Wound strings are left out: their B does not tell their diameter.
 * Not for a section where most strings differ from the schedule alike: that is common to them and not seen.
 *
 * How often it is right over many invented scales stands in the bench's table `wires`.
 */
import type { StringPosition } from '../../piano/reading.ts';
import type { WireGauge } from '../../piano/wireGauge.ts';
import type { ScaleOptions } from '../scale/analyseScale.ts';
import { rowsBySection, type ScheduleRows, scheduleBreaks } from '../schedule/scheduleRows.ts';
import { type JudgedString, judgeNotes, WRONG_PROBABILITY } from './judgeNotes.ts';
import { type MeasuredString, measuredNotes, type StringInharmonicity } from './measuredNotes.ts';
import { type PlainNote, plainNotes, plainRange } from './plainNotes.ts';
import { trendModel } from './stiffnessTrend.ts';

export type DiameterJudgement = {
  readonly midi: number;
  readonly stringPosition: StringPosition;
  readonly statedDiameterMm: number;
  readonly expectedB: number;
  readonly measuredB: number;
  /** Measured over expected, less what the other strings have in common. */
  readonly ratioToOthers: number;
  readonly departureInSigmas: number;
  readonly verdict: 'fits' | 'does-not-fit' | 'look-again' | 'nothing-fits';
  /** That the wire is not of the stated size, or the reading or the length is wrong. */
  readonly probability: number;
  /** The size that fits best, where the stated one does not. */
  readonly fittingGauge: WireGauge | null;
  readonly fittingGaugeProbability: number;
  /** Not bound to any size. */
  readonly fittingDiameterMm: number;
  readonly fittingDiameterStandardUncertaintyMm: number;
  /** The speaking length that would do the same with the stated wire. */
  readonly fittingLengthMm: number;
  /** The stated diameter is out of line with those beside it. */
  readonly isOutOfRun: boolean;
};

export type DiameterCheck =
  | {
      readonly known: true;
      /** In order of note and string. */
      readonly strings: readonly DiameterJudgement[];
      /** Scatter of log B from string to string, measuring errors not in it: 0.02 is 2 %. */
      readonly spread: number;
      /** What measured over expected B is in the middle of each section: 1.03 is 3 % above. */
      readonly sections: readonly { readonly fromMidi: number; readonly toMidi: number; readonly ratio: number }[];
      /** Measured notes that could not be judged: wound, or a figure of the schedule is missing. */
      readonly leftOutMidi: readonly number[];
    }
  | { readonly known: false; readonly reason: 'not-enough-evidence' };

/** Fewer plain notes than this have nothing in common that could be told. Chosen. */
export const LEAST_CHECK_NOTES = 10;
/** Chosen: named for another look from a quarter on. */
const LOOK_PROBABILITY = 0.25;

/** @throws {RangeError} if a B or its uncertainty is not a finite number above zero */
export function diametersFromB(
  rows: ScheduleRows,
  measured: readonly StringInharmonicity[],
  options: ScaleOptions,
): DiameterCheck {
  const breaks = scheduleBreaks(rows, options);
  const plain = plainNotes(rows, breaks, options);
  const notes = measuredNotes(plain, measured);
  if (notes.length < LEAST_CHECK_NOTES) return { known: false, reason: 'not-enough-evidence' };
  const ranges = rowsBySection(rows, breaks).flatMap((section) => plainRange(section, plain));
  const model = trendModel(ranges);
  const judged = judgeNotes(model, notes);
  if (!judged) return { known: false, reason: 'not-enough-evidence' };
  const { fit } = judged;
  return {
    known: true,
    strings: notes.flatMap(({ plain: note, strings }, index) =>
      strings.flatMap((string, at) => {
        const own = judged.notes[index]?.[at];
        return own ? [judgement(note, string, own)] : [];
      }),
    ),
    spread: fit.spreads[0] ?? 0,
    sections: ranges.map((range) => ({
      ...range,
      ratio: Math.exp(model.at(Math.round((range.fromMidi + range.toMidi) / 2), fit.parameters).value),
    })),
    leftOutMidi: [...new Set(measured.map(({ midi }) => midi))]
      .filter((midi) => !plain.has(midi))
      .sort((a, b) => a - b),
  };
}

function judgement(note: PlainNote, { reading }: MeasuredString, judged: JudgedString): DiameterJudgement {
  const { diameterMm: statedDiameterMm, speakingLengthMm, expectedB } = note;
  const { odds, departure, standardUncertainty, isOutOfRun } = judged;
  const probability = 1 - odds.statedProbability;
  const fittingDiameterMm = statedDiameterMm * Math.exp(departure / 2);
  return {
    midi: reading.midi,
    stringPosition: reading.stringPosition,
    statedDiameterMm,
    expectedB,
    measuredB: reading.inharmonicityB,
    ratioToOthers: Math.exp(departure),
    departureInSigmas: departure / standardUncertainty,
    verdict: verdictOf(probability, odds.otherProbability),
    probability,
    fittingGauge: odds.best?.gauge ?? null,
    fittingGaugeProbability: odds.best?.probability ?? 0,
    fittingDiameterMm,
    fittingDiameterStandardUncertaintyMm: (fittingDiameterMm * standardUncertainty) / 2,
    fittingLengthMm: speakingLengthMm * Math.exp(-departure / 4),
    isOutOfRun,
  };
}

function verdictOf(probability: number, otherProbability: number): DiameterJudgement['verdict'] {
  if (probability < LOOK_PROBABILITY) return 'fits';
  if (probability < WRONG_PROBABILITY) return 'look-again';
  return otherProbability > 0.5 ? 'nothing-fits' : 'does-not-fit';
}
