/** A survey's inharmonicity as its chart, its sentences and its table want it. */
import { formatInharmonicity, formatNote, formatNotes, formatNumber, formatShare } from '../../piano/format.ts';
import type { SurveyInharmonicity } from '../../survey/surveyCurves.ts';
import type { NoteCurve } from '../../ui/NoteCurveLayer.tsx';
import type { NotePoint, NoteSeries } from '../../ui/NotesChart.tsx';
import { texts } from '../../ui/texts.ts';
import type { CurveRow } from './CurveTable.tsx';
import { awayFromCurve, REACH_SIGMAS, stretchesOf, twoKinds, xOfString } from './curveSeries.ts';
import { type NamedString, namesOf } from './stringNames.ts';

const words = texts.charts.inharmonicity;

type Note = SurveyInharmonicity['notes'][number];

export function inharmonicitySeries({ notes }: SurveyInharmonicity): NoteSeries[] {
  const nameOf = namesOf(notes);
  return twoKinds(
    notes,
    ({ standsOut }) => standsOut,
    (note) => toPoint(note, nameOf),
    texts.charts.standsOut,
  );
}

/** Bars reach as far up as down in ratio, so that they never reach zero. */
function toPoint(note: Note, nameOf: (string: NamedString) => string): NotePoint {
  const { midi, stringPosition, inharmonicityB, inharmonicityBStandardUncertainty, standsOut } = note;
  const reach = Math.exp((REACH_SIGMAS * inharmonicityBStandardUncertainty) / inharmonicityB);
  const figure = formatInharmonicity(inharmonicityB, inharmonicityBStandardUncertainty);
  return {
    x: xOfString(midi, stringPosition),
    y: inharmonicityB,
    low: inharmonicityB / reach,
    high: inharmonicityB * reach,
    detail: `${nameOf(note)}: ${figure}, ${words.timesCurve(formatNumber(note.ratioToCurve, 2))}`,
    ...(standsOut && { tag: awayFromCurve(midi, note.ratioToCurve) }),
  };
}

/** The band is where a single note is expected: the curve's uncertainty and the spread of notes about it. */
export function inharmonicityCurve({ curve, breakAfterMidi }: SurveyInharmonicity): NoteCurve {
  const notes = curve.map(({ midi, inharmonicityB, noteStandardUncertainty }) => {
    const reach = Math.exp((REACH_SIGMAS * noteStandardUncertainty) / inharmonicityB);
    return { x: midi, y: inharmonicityB, low: inharmonicityB / reach, high: inharmonicityB * reach };
  });
  return { name: words.curve, stretches: stretchesOf(notes, breakAfterMidi) };
}

/** Which notes stand out, in words. */
export function standingOutSentence({ notes }: SurveyInharmonicity): string {
  const nameOf = namesOf(notes);
  const names = notes
    .filter(({ standsOut }) => standsOut)
    .map((note) => words.one(nameOf(note), formatNumber(note.ratioToCurve, 2)));
  return names.length === 0 ? words.nothingStandsOut : words.standingOut(names.join(', '));
}

export function spreadSentence({ woundSpread, plainSpread, woundTopMidi }: SurveyInharmonicity): string {
  return words.spread(formatShare(woundSpread), formatNote(woundTopMidi), formatShare(plainSpread));
}

/** Every measured string, and of the notes heard without a measured B what the curve says, marked as such. */
export function inharmonicityRows(inharmonicity: SurveyInharmonicity, heardMidi: readonly number[]): CurveRow[] {
  const nameOf = namesOf(inharmonicity.notes);
  const ofCurve = new Map(inharmonicity.curve.map((at) => [at.midi, at]));
  const rows = inharmonicity.notes.map((note) => {
    const at = ofCurve.get(note.midi);
    return {
      midi: note.midi,
      key: `${note.midi} ${note.stringPosition}`,
      name: nameOf(note),
      measured: formatInharmonicity(note.inharmonicityB, note.inharmonicityBStandardUncertainty),
      curve: formatInharmonicity(at?.inharmonicityB ?? null, at?.standardUncertainty),
      ratio: `${formatNumber(note.ratioToCurve, 2)}${note.standsOut ? `, ${texts.charts.standsOut}` : ''}`,
    };
  });
  const unmeasured = unmeasuredMidi(inharmonicity, heardMidi).map((midi) => {
    const at = ofCurve.get(midi);
    const curve = formatInharmonicity(at?.inharmonicityB ?? null, at?.noteStandardUncertainty);
    return { midi, key: `${midi}`, name: formatNote(midi), measured: texts.charts.fromCurve, curve, ratio: '' };
  });
  return [...rows, ...unmeasured].sort((a, b) => a.midi - b.midi);
}

/** Notes that the curve speaks for; null where all were measured. */
export function notMeasuredSentence(inharmonicity: SurveyInharmonicity, heardMidi: readonly number[]): string | null {
  const midis = unmeasuredMidi(inharmonicity, heardMidi);
  return midis.length === 0 ? null : words.notMeasured(formatNotes(midis));
}

function unmeasuredMidi({ notes, curve }: SurveyInharmonicity, heardMidi: readonly number[]): number[] {
  const measured = new Set(notes.map(({ midi }) => midi));
  const known = new Set(curve.map(({ midi }) => midi));
  return [...new Set(heardMidi)].filter((midi) => known.has(midi) && !measured.has(midi)).sort((a, b) => a - b);
}
