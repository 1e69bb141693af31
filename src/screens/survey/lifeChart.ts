/** How long a survey's notes live, as the chart, its sentences and its table want it. */
import { formatNumber, formatSeconds, formatShare } from '../../piano/format.ts';
import type { SurveyLife } from '../../survey/surveyCurves.ts';
import type { NoteCurve } from '../../ui/NoteCurveLayer.tsx';
import type { NotePoint, NoteSeries } from '../../ui/NotesChart.tsx';
import { texts } from '../../ui/texts.ts';
import type { CurveRow } from './CurveTable.tsx';
import { awayFromCurve, REACH_SIGMAS, stretchesOf, twoKinds, xOfString } from './curveSeries.ts';
import { type NamedString, namesOf } from './stringNames.ts';

const words = texts.charts.life;

type Note = SurveyLife['notes'][number];

export function lifeSeries({ notes }: SurveyLife): NoteSeries[] {
  const nameOf = namesOf(notes);
  return twoKinds(
    notes,
    ({ isWeak }) => isWeak,
    (note) => toPoint(note, nameOf),
    words.weak,
  );
}

function toPoint(note: Note, nameOf: (string: NamedString) => string): NotePoint {
  const { midi, stringPosition, lifeTimeS, ratioToCurve, isWeak } = note;
  const times = words.timesCurve(formatNumber(ratioToCurve, 2));
  return {
    x: xOfString(midi, stringPosition),
    y: lifeTimeS,
    low: lifeTimeS,
    high: lifeTimeS,
    detail: `${nameOf(note)}: ${formatSeconds(lifeTimeS)}, ${times}`,
    ...(isWeak && { tag: awayFromCurve(midi, ratioToCurve) }),
  };
}

/** The band is where a single note is expected: the curve's uncertainty and the spread of notes about it. */
export function lifeCurve({ curve, spread }: SurveyLife): NoteCurve {
  const notes = curve.map(({ midi, lifeTimeS, logStandardUncertainty }) => {
    const reach = Math.exp(REACH_SIGMAS * Math.hypot(logStandardUncertainty, spread));
    return { x: midi, y: lifeTimeS, low: lifeTimeS / reach, high: lifeTimeS * reach };
  });
  return { name: words.curve, stretches: stretchesOf(notes, null) };
}

/** Which notes are weak, in words. */
export function weakSentence({ notes }: SurveyLife): string {
  const nameOf = namesOf(notes);
  const names = notes
    .filter(({ isWeak }) => isWeak)
    .map((note) => words.one(nameOf(note), formatNumber(note.ratioToCurve, 2)));
  return names.length === 0 ? words.nothingWeak : words.weakNotes(names.join(', '));
}

export function lifeSpreadSentence({ spread }: SurveyLife): string {
  return words.spread(formatShare(spread));
}

export function lifeRows({ notes, curve }: SurveyLife): CurveRow[] {
  const nameOf = namesOf(notes);
  const ofCurve = new Map(curve.map((at) => [at.midi, at]));
  return notes.map((note) => ({
    key: `${note.midi} ${note.stringPosition}`,
    name: nameOf(note),
    measured: formatSeconds(note.lifeTimeS),
    curve: formatSeconds(ofCurve.get(note.midi)?.lifeTimeS ?? null),
    ratio: `${formatNumber(note.ratioToCurve, 2)}${note.isWeak ? `, ${words.weak}` : ''}`,
  }));
}
