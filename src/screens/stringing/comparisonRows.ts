/** Two schedules side by side, as their table, their chart and their sentences want them. */
import { formatNote, formatNoteRange, formatNotes, formatSpreadCents } from '../../piano/format.ts';
import { formatAddedPull, formatGrowth, formatLengthMm, formatWireMm } from '../../piano/formatStringing.ts';
import type { ScheduleRow } from '../../piano/stringingRecords.ts';
import type { ComparisonCaution, NoteComparison, ScaleComparison } from '../../stringing/scale/compareScales.ts';
import type { NoteFigures } from '../../stringing/scale/noteFigures.ts';
import { HIGH_SHARE } from '../../stringing/scale/scaleCautions.ts';
import type { NoteSeries } from '../../ui/NotesChart.tsx';
import { texts } from '../../ui/texts.ts';
import { type Drawn, drawnText, pointOf } from './scaleChart.ts';

const words = texts.stringing.compare;

export type ComparedNote = {
  readonly midi: number;
  readonly isDifferent: boolean;
  readonly wire: string;
  readonly length: string;
  /** Figures before and after with their growth, by what is drawn. */
  readonly figures: Readonly<Record<Drawn, string>>;
};

type Rows = readonly ScheduleRow[];

export function comparedNotes({ notes }: ScaleComparison, before: Rows, planned: Rows): ComparedNote[] {
  const earlier = new Map(before.map((row) => [row.midi, row]));
  const later = new Map(planned.map((row) => [row.midi, row]));
  return notes.map((note) => {
    const [old, next] = [earlier.get(note.midi), later.get(note.midi)];
    return {
      midi: note.midi,
      isDifferent: differs(note),
      wire: words.arrow(wireText(old), wireText(next)),
      length: words.arrow(
        formatLengthMm(old?.speakingLengthMm ?? null),
        formatLengthMm(next?.speakingLengthMm ?? null),
      ),
      figures: {
        tension: figureText(note, 'tension'),
        noteTension: figureText(note, 'noteTension'),
        stress: figureText(note, 'stress'),
        breaking: figureText(note, 'breaking'),
        inharmonicity: figureText(note, 'inharmonicity'),
      },
    };
  });
}

/** Growths below this are rounding. */
const LEAST_GROWTH = 1e-6;

function differs({ before, planned, tensionGrowth, noteTensionGrowth, stressGrowth }: NoteComparison): boolean {
  const grows = [tensionGrowth, noteTensionGrowth, stressGrowth].some((growth) => Math.abs(growth ?? 0) > LEAST_GROWTH);
  const known = (note: NoteFigures | null) =>
    [note?.tensionN ?? null, note?.noteTensionN ?? null].map((figure) => figure === null);
  const isKnownOnce = known(before).some((isUnknown, index) => isUnknown !== known(planned)[index]);
  return grows || isKnownOnce || before?.breakingShare !== planned?.breakingShare;
}

function wireText(row: ScheduleRow | undefined): string {
  if (!row || row.wireDiameterMm === null) return formatWireMm(null);
  const core = row.coreDiameterMm === null ? '' : ` / ${formatWireMm(row.coreDiameterMm)}`;
  return `${formatWireMm(row.wireDiameterMm)}${core}`;
}

const GROWTHS: Readonly<Record<Drawn, (note: NoteComparison) => number | null>> = {
  tension: (note) => note.tensionGrowth,
  noteTension: (note) => note.noteTensionGrowth,
  stress: (note) => note.stressGrowth,
  breaking: () => null,
  inharmonicity: (note) => note.predictedBGrowth,
};

function figureText(note: NoteComparison, drawn: Drawn): string {
  const text = (figures: NoteFigures | null) => (figures ? drawnText(figures, drawn) : formatLengthMm(null));
  const values = words.arrow(text(note.before), text(note.planned));
  const growth = GROWTHS[drawn](note);
  return growth === null || Math.abs(growth) <= LEAST_GROWTH ? values : words.withGrowth(values, formatGrowth(growth));
}

/** What was before as rings, behind; the plan over it. */
export function comparisonSeries(
  { notes }: ScaleComparison,
  drawn: Drawn,
  names: { readonly before: string; readonly planned: string },
): NoteSeries[] {
  const before = notes.flatMap((note) => (note.before ? pointOf(note.before, drawn) : []));
  const planned = notes.flatMap((note) => (note.planned ? pointOf(note.planned, drawn) : []));
  return [
    { name: names.before, shape: 'ring' as const, points: before },
    { name: names.planned, shape: 'triangle' as const, points: planned },
  ].filter(({ points }) => points.length > 0);
}

/** Cautions of the comparison, and of strings that the plan brings nearer to breaking. */
export function comparisonSentences({ cautions, notes }: ScaleComparison): string[] {
  const nearer = notes.filter(({ before, planned }) => {
    const share = planned?.breakingShare ?? 0;
    return share >= HIGH_SHARE && share > (before?.breakingShare ?? 0) + LEAST_GROWTH;
  });
  const stress = nearer.length > 0 ? [words.cautions['stress-grows'](formatNotes(nearer.map(({ midi }) => midi)))] : [];
  return [...cautions.map(cautionSentence), ...stress];
}

function cautionSentence(caution: ComparisonCaution): string {
  switch (caution.kind) {
    case 'pitch-rises':
      return words.cautions['pitch-rises'](formatSpreadCents(caution.cents));
    case 'total-grows':
      return words.cautions['total-grows'](formatGrowth(caution.growth), formatAddedPull(caution.addedN));
    case 'section-grows':
      return words.cautions['section-grows'](
        formatNoteRange(caution.fromMidi, caution.toMidi),
        formatGrowth(caution.growth),
        formatAddedPull(caution.addedN),
      );
    case 'notes-left-out':
      return words.cautions['notes-left-out'](words.notes(caution.noteCount));
  }
}

export function noteName({ midi }: ComparedNote): string {
  return formatNote(midi);
}
