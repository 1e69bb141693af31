/** A survey's inharmonicity against what a schedule leads one to expect, as chart, table and sentences want it. */
import { formatInharmonicity, formatNote, formatNoteRange, formatNotes, formatNumber } from '../../piano/format.ts';
import type { Take } from '../../piano/instrument.ts';
import type { StringPosition } from '../../piano/reading.ts';
import type { ScheduleRow } from '../../piano/stringingRecords.ts';
import type { WireGrade } from '../../piano/wireGrade.ts';
import { noteFigures } from '../../stringing/scale/noteFigures.ts';
import { rowsBySection } from '../../stringing/schedule/scheduleRows.ts';
import type { DiameterCheck, DiameterJudgement } from '../../stringing/wireCheck/diameterFromB.ts';
import type { StringInharmonicity } from '../../stringing/wireCheck/measuredNotes.ts';
import type { CurveNote, NoteCurve } from '../../ui/NoteCurveLayer.tsx';
import type { NotePoint, NoteSeries } from '../../ui/NotesChart.tsx';
import { texts } from '../../ui/texts.ts';

const words = texts.stringing.measured;

/** Bars and bands reach two standard uncertainties either way: nineteen of twenty. */
const REACH_SIGMAS = 2;
/** The strings of a note stand this far apart along the axis, in notes. */
const STRING_SPACING = 0.25;

/** Of the kept takes, those whose inharmonicity could be measured. */
export function measuredStrings(takes: readonly Take[]): StringInharmonicity[] {
  return takes.flatMap(({ isKept, reading }) => {
    const { midi, stringPosition, quality } = reading;
    const inharmonicityB = reading.inharmonicityB ?? 0;
    const inharmonicityBStandardUncertainty = reading.inharmonicityBStandardUncertainty ?? 0;
    const isMeasured = isKept && quality.isUsable && inharmonicityB > 0 && inharmonicityBStandardUncertainty > 0;
    return isMeasured ? [{ midi, stringPosition, inharmonicityB, inharmonicityBStandardUncertainty }] : [];
  });
}

export function stringName(midi: number, position: StringPosition): string {
  return `${formatNote(midi)}, ${texts.common.stringPosition[position]}`;
}

/** What was measured: discs, and triangles with their note where the wire does not fit. */
export function measuredSeries(measured: readonly StringInharmonicity[], check: DiameterCheck): NoteSeries[] {
  const judged = check.known ? check.strings : [];
  const isCalled = ({ midi, stringPosition }: StringInharmonicity) =>
    judged.some((one) => one.midi === midi && one.stringPosition === stringPosition && one.verdict !== 'fits');
  return [
    {
      name: words.series.measured,
      shape: 'disc' as const,
      points: measured.filter((one) => !isCalled(one)).map(pointOf),
    },
    {
      name: words.series.called,
      shape: 'triangle' as const,
      points: measured.filter(isCalled).map((one) => ({
        ...pointOf(one),
        tag: { text: formatNote(one.midi), stands: 'above' as const },
      })),
    },
  ].filter(({ points }) => points.length > 0);
}

function pointOf(one: StringInharmonicity): NotePoint {
  const { midi, stringPosition, inharmonicityB: y, inharmonicityBStandardUncertainty: u } = one;
  const shift = stringPosition === 0 ? 0 : (stringPosition - 2) * STRING_SPACING;
  // An uncertainty as large as the figure has no lower end on a logarithmic axis: the bar then ends at the point.
  const low = y > REACH_SIGMAS * u ? y - REACH_SIGMAS * u : y;
  const detail = words.detail(stringName(midi, stringPosition), words.series.measured, formatInharmonicity(y, u));
  return { x: midi + shift, y, low, high: y + REACH_SIGMAS * u, detail };
}

/** What a figure of the schedule leaves open. Chosen: a tape and a micrometer in careful hands; E is given from 197 to 203 GPa. */
const LENGTH_SIGMA_MM = 0.5;
const DIAMETER_SIGMA_MM = 0.003;
const STIFFNESS_SIGMA = 0.02;
/** 1 % of a length that was interpolated, four times in log B. */
const INTERPOLATED_SIGMA = 0.04;

/**
 * Relative standard uncertainty of the expected inharmonicity of plain wire: at a given pitch B goes with E·d²/L⁴.
 * @example expectedSigma({ ...row, speakingLengthMm: 400, wireDiameterMm: 1 }) // 0.0217…
 */
export function expectedSigma(row: ScheduleRow): number {
  const { speakingLengthMm, wireDiameterMm, interpolated } = row;
  return Math.hypot(
    STIFFNESS_SIGMA,
    (4 * LENGTH_SIGMA_MM) / (speakingLengthMm ?? Number.POSITIVE_INFINITY),
    (2 * DIAMETER_SIGMA_MM) / (wireDiameterMm ?? Number.POSITIVE_INFINITY),
    interpolated.includes('speakingLengthMm') ? INTERPOLATED_SIGMA : 0,
  );
}

/** Of plain wire with its band; of wound wire the lower bound, as a bare line. Broken where a figure is missing or a section ends. */
export function expectedCurve(
  rows: readonly ScheduleRow[],
  breaksAfterMidi: readonly number[],
  pitchStandardHz: number,
  ownGrades: readonly WireGrade[],
): NoteCurve {
  const stretches = rowsBySection(rows, breaksAfterMidi).flatMap((section) => {
    const found: CurveNote[][] = [];
    for (const row of section) {
      const note = noteFigures(row, pitchStandardHz, ownGrades);
      const y = note.predictedB;
      if (y === null) continue;
      const reach = note.isWound ? 0 : REACH_SIGMAS * expectedSigma(row);
      const point = { x: row.midi, y, low: y * Math.exp(-reach), high: y * Math.exp(reach) };
      const last = found.at(-1);
      if (last?.at(-1)?.x === row.midi - 1) last.push(point);
      else found.push([point]);
    }
    return found;
  });
  return { name: words.series.expected, stretches };
}

/** Everything that the axis must take in. */
export function valuesDrawn(series: readonly NoteSeries[], curve: NoteCurve): number[] {
  const points = series.flatMap(({ points: own }) => own.flatMap(({ y, low, high }) => [y, low, high]));
  return [...points, ...curve.stretches.flatMap((notes) => notes.map(({ y }) => y))];
}

/** What is common to the strings of each section; null where nothing could be judged. */
export function commonSentence(check: DiameterCheck): string | null {
  if (!check.known || check.sections.length === 0) return null;
  const sections = check.sections.map(({ fromMidi, toMidi, ratio }) =>
    words.commonSection(formatNoteRange(fromMidi, toMidi), formatNumber(ratio, 2)),
  );
  return words.common(sections.join(', '));
}

export function leftOutSentence(check: DiameterCheck): string | null {
  return check.known && check.leftOutMidi.length > 0 ? words.leftOut(formatNotes(check.leftOutMidi)) : null;
}

/** Strings whose wire does not fit, the surest first. */
export function findings(check: DiameterCheck): DiameterJudgement[] {
  if (!check.known) return [];
  return check.strings.filter(({ verdict }) => verdict !== 'fits').sort((a, b) => b.probability - a.probability);
}

/**
 * A diameter that the schedule may take for a finding's note: only where all strings of the note that were judged agree on it, since a
 * schedule states one wire for all of them.
 */
export function offeredDiameterMm(check: DiameterCheck, { midi }: DiameterJudgement): number | null {
  if (!check.known) return null;
  const ofNote = check.strings.filter((one) => one.midi === midi);
  const offered = ofNote.map(({ verdict, fittingGauge }) =>
    verdict === 'does-not-fit' || verdict === 'look-again' ? (fittingGauge?.diameterMm ?? null) : null,
  );
  const [first = null] = offered;
  return offered.every((one) => one === first) ? first : null;
}
