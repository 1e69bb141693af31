/** What a survey's notes say together: the inharmonicity curve of the instrument and how long its notes live. */
import {
  fitInharmonicityCurve,
  type InharmonicityAt,
  type InharmonicityNote,
  inharmonicityAt,
} from '../analysis/compass/inharmonicityCurve.ts';
import { USUAL_WOUND_TOP_MIDI } from '../analysis/compass/inharmonicityModel.ts';
import { fitLifeCurve, type LifeAt, type LifeNote, lifeAt } from '../analysis/compass/lifeCurve.ts';
import { type Compass, notesOf } from '../piano/compass.ts';
import type { NoteReading } from '../piano/reading.ts';

export type SurveyInharmonicity = {
  /** The curve at every note of the compass, from the lowest up. */
  readonly curve: readonly (InharmonicityAt & { readonly midi: number })[];
  /** What was measured, in the order of the readings. */
  readonly notes: readonly InharmonicityNote[];
  /** The curve may jump after this note, where the bass bridge ends; null where that is not known. */
  readonly breakAfterMidi: number | null;
  /** Where wound strings are taken to end: the end of the bass bridge, or where it commonly lies. */
  readonly woundTopMidi: number;
  /** Spread of log B from note to note, on wound strings and on plain ones: 0.05 is 5 %. */
  readonly woundSpread: number;
  readonly plainSpread: number;
};

export type SurveyLife = {
  readonly curve: readonly (LifeAt & { readonly midi: number })[];
  readonly notes: readonly LifeNote[];
  /** Spread of the log of the life time from note to note. */
  readonly spread: number;
};

/** What the curves need of a string's reading. */
export type CurveReading = Pick<
  NoteReading,
  'midi' | 'stringPosition' | 'inharmonicityB' | 'inharmonicityBStandardUncertainty' | 'lifeTimeS'
> & { readonly quality: Pick<NoteReading['quality'], 'isUsable'> };

/** Null where too few notes were measured. */
export type SurveyCurves = { readonly inharmonicity: SurveyInharmonicity | null; readonly life: SurveyLife | null };

/**
 * @param readings the kept reading of every string; those that cannot be used are left out
 * @param bassBridgeTopMidi the highest note on the bass bridge; null where nobody said
 */
export function surveyCurves(
  readings: readonly CurveReading[],
  compass: Compass,
  bassBridgeTopMidi: number | null,
): SurveyCurves {
  const usable = readings.filter(({ quality }) => quality.isUsable);
  return { inharmonicity: inharmonicityOf(usable, compass, bassBridgeTopMidi), life: lifeOf(usable, compass) };
}

function inharmonicityOf(
  readings: readonly CurveReading[],
  compass: Compass,
  bassBridgeTopMidi: number | null,
): SurveyInharmonicity | null {
  const measured = readings.flatMap(({ midi, stringPosition, ...reading }) => {
    const inharmonicityB = reading.inharmonicityB ?? 0;
    const inharmonicityBStandardUncertainty = reading.inharmonicityBStandardUncertainty ?? 0;
    const isMeasured = inharmonicityB > 0 && inharmonicityBStandardUncertainty > 0;
    return isMeasured ? [{ midi, stringPosition, inharmonicityB, inharmonicityBStandardUncertainty }] : [];
  });
  const fitted = fitInharmonicityCurve(measured, bassBridgeTopMidi);
  if (!fitted) return null;
  const { notes, woundSpread, plainSpread, bassBridgeTopMidi: breakAfterMidi } = fitted;
  const curve = notesOf(compass).map((midi) => ({ midi, ...inharmonicityAt(fitted, midi) }));
  const woundTopMidi = breakAfterMidi ?? USUAL_WOUND_TOP_MIDI;
  return { curve, notes, breakAfterMidi, woundTopMidi, woundSpread, plainSpread };
}

function lifeOf(readings: readonly CurveReading[], compass: Compass): SurveyLife | null {
  const measured = readings.flatMap(({ midi, stringPosition, lifeTimeS }) =>
    lifeTimeS !== null && lifeTimeS > 0 ? [{ midi, stringPosition, lifeTimeS }] : [],
  );
  const fitted = fitLifeCurve(measured);
  if (!fitted) return null;
  const curve = notesOf(compass).map((midi) => ({ midi, ...lifeAt(fitted, midi) }));
  return { curve, notes: fitted.notes, spread: fitted.spread };
}
