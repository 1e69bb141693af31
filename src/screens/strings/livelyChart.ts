/** How lively the scale is, as its chart and its sentences want it. */
import { formatSeconds, formatShare } from '../../piano/format.ts';
import { robustScatter } from '../../piano/robustStatistics.ts';
import type { LifeComparison, LivelyNote } from '../../stringing/life/livelyNotes.ts';
import type { NoteCurve } from '../../ui/NoteCurveLayer.tsx';
import type { NotePoint, NoteSeries } from '../../ui/NotesChart.tsx';
import { texts } from '../../ui/texts.ts';
import { keyOf, nameOf, type StringPlace } from './stringKey.ts';

const words = texts.strings.lively;

/** The strings of a note stand this far apart along the axis, in notes. */
const STRING_SPACING = 0.25;

export function livelySeries(notes: readonly LivelyNote[], comparison: LifeComparison | null): NoteSeries[] {
  const lost = new Set(changed(comparison, 'lost').map(keyOf));
  const isLost = (note: LivelyNote) => lost.has(keyOf(note));
  const ordinary = notes.filter((note) => !note.isWeak && !isLost(note));
  return [
    { name: words.now, shape: 'disc' as const, points: ordinary.map((note) => pointOf(note)) },
    {
      name: words.lost,
      shape: 'square' as const,
      points: notes.filter((note) => isLost(note) && !note.isWeak).map((note) => pointOf(note, true)),
    },
    {
      name: words.weak,
      shape: 'triangle' as const,
      points: notes.filter(({ isWeak }) => isWeak).map((note) => pointOf(note, true)),
    },
  ].filter(({ points }) => points.length > 0);
}

function pointOf(note: LivelyNote, isNamed = false): NotePoint {
  const { midi, stringPosition, lifeTimeS, expectedS, ratioToNeighbours } = note;
  const isBelow = (ratioToNeighbours ?? 1) <= 1;
  return {
    x: midi + (stringPosition === 0 ? 0 : (stringPosition - 2) * STRING_SPACING),
    y: lifeTimeS,
    low: lifeTimeS,
    high: lifeTimeS,
    detail: words.detail(nameOf(note), formatSeconds(lifeTimeS), formatSeconds(expectedS)),
    ...(isNamed && { tag: { text: nameOf(note).split(',')[0] ?? '', stands: isBelow ? 'below' : 'above' } as const }),
  };
}

/** What the neighbours lead one to expect, note by note, with half and twice of it as the band within which notes usually lie. */
export function livelyCurve(notes: readonly LivelyNote[]): NoteCurve | null {
  const byNote = new Map(
    notes.flatMap(({ midi, expectedS }) => (expectedS === null ? [] : [[midi, expectedS] as const])),
  );
  if (byNote.size < 2) return null;
  const spread = Math.exp(2 * spreadOf(notes));
  const stretch = [...byNote].sort(([a], [b]) => a - b).map(([x, y]) => ({ x, y, low: y / spread, high: y * spread }));
  return { name: words.expected, stretches: [stretch] };
}

/** Of the log of life over what is expected: a third of notes lie farther off than that. Robust, by the middle distance. */
export function spreadOf(notes: readonly LivelyNote[]): number {
  const logs = notes.flatMap(({ ratioToNeighbours }) =>
    ratioToNeighbours === null ? [] : [Math.log(ratioToNeighbours)],
  );
  return logs.length === 0 ? 0 : robustScatter(logs, 0);
}

type Changed = StringPlace & { readonly ratio: number };

function changed(comparison: LifeComparison | null, kind: 'lost' | 'gained'): Changed[] {
  return comparison?.known ? comparison.notes.filter(({ change }) => change === kind) : [];
}

/** Which notes are weak, and what changed since the earlier survey. */
export function livelySentences(notes: readonly LivelyNote[], comparison: LifeComparison | null): string[] {
  const weak = notes.filter(({ isWeak }) => isWeak);
  const named = (list: readonly Changed[]) =>
    list.map((one) => words.ratio(nameOf(one), formatShare(one.ratio))).join('; ');
  const sentences = [
    weak.length === 0
      ? words.noWeak
      : words.weakNotes(named(weak.map((note) => ({ ...note, ratio: note.ratioToNeighbours ?? 0 })))),
  ];
  if (!comparison) return sentences;
  if (!comparison.known) return [...sentences, words.tooFew];
  const [lost, gained] = [changed(comparison, 'lost'), changed(comparison, 'gained')];
  sentences.push(words.common(formatShare(comparison.commonRatio), formatShare(comparison.scatter)));
  if (lost.length > 0) sentences.push(words.lostNotes(named(lost)));
  if (gained.length > 0) sentences.push(words.gainedNotes(named(gained)));
  if (lost.length + gained.length === 0) sentences.push(words.noChange);
  return sentences;
}
