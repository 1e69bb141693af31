/** The verdict in an owner's words, with its certainty and with what speaks against it. */
import { formatDate, formatNote, formatNoteRange, formatYears } from '../piano/format.ts';
import { formatCentsSize } from '../piano/formatPlain.ts';
import { formatProbability } from '../piano/formatStability.ts';
import type { Drift } from '../stability/drift/analyseDrift.ts';
import type { JudgedPin } from '../stability/drift/judgedPin.ts';
import { SUSPECT, type VerdictState } from '../stability/drift/verdict.ts';
import type { GroundPin } from '../stability/drift/verdictGrounds.ts';
import type { Zone } from '../stability/drift/zoneScan.ts';
import type { JudgedRecords } from './judgedRecords.ts';
import { type NewWire, newWireOf } from './newWire.ts';
import { isWithin } from './pitchCourse.ts';
import { slippingOf } from './slipping.ts';
import { fewNames, stringName } from './stringWords.ts';
import type { ReportWords } from './words.ts';

export type VerdictSection = {
  readonly title: string;
  readonly state: VerdictState;
  /** A few words. */
  readonly headline: string;
  readonly sentences: readonly string[];
  /** What new wire did and is still to do; empty where there is none. */
  readonly newWire: readonly string[];
};

export function verdictSection(records: Pick<JudgedRecords, 'drift' | 'history'>, words: ReportWords): VerdictSection {
  const { drift } = records;
  const { state } = drift.verdict;
  return {
    title: words.verdict.title,
    state,
    headline: words.verdict.titles[state],
    sentences: sentencesOf(drift, words),
    newWire: newWireSentences(newWireOf(records), words),
  };
}

function newWireSentences(wire: NewWire | null, { verdict: { newWire: words }, language }: ReportWords): string[] {
  if (wire === null) return [];
  const since = words.since(formatDate(wire.since, language));
  switch (wire.kind) {
    case 'not seen yet':
      return [since, words.toCome];
    case 'first year': {
      const cents = formatCentsSize(wire.movedCents);
      return [since, wire.movedCents > 0 ? words.roseSoFar(cents) : words.fellSoFar(cents), words.toCome];
    }
    case 'settling':
    case 'settled': {
      const fell = wire.firstYearCents !== null && wire.firstYearCents < 0;
      return [
        since,
        ...(fell ? [words.firstYear(formatCentsSize(wire.firstYearCents))] : []),
        wire.kind === 'settling' ? words.falling(formatCentsSize(wire.centsPerYear)) : words.settled,
      ];
    }
  }
}

function sentencesOf(drift: Drift, words: ReportWords): string[] {
  switch (drift.verdict.state) {
    case 'holding':
      return [...holding(drift, words), ...foundation(drift, words)];
    case 'giving way':
    case 'watch':
      return [...slipping(drift, words), ...others(drift, words), ...foundation(drift, words)];
    case 'not enough evidence':
      return notEnough(drift, words);
  }
}

function holding({ verdict, detail }: Drift, words: ReportWords): string[] {
  const ruledOut = verdict.slipRuledOutAboveCentsPerYear;
  return [
    ...(ruledOut === null ? [] : [words.verdict.holding(formatCentsSize(ruledOut))]),
    ...verdict.grounds.flatMap((ground) => (ground.kind === 'pins-open' ? openSentence(ground.pins, words) : [])),
    ...(detail.isHumidityKnown ? [words.verdict.holdingSeason] : []),
  ];
}

function openSentence(pins: readonly GroundPin[], words: ReportWords): string {
  const names = pins.map((pin) => stringName(pin, words));
  return words.verdict.open(fewNames(names, words), pins.length === 1);
}

function slipping(drift: Drift, words: ReportWords): string[] {
  const { zones, pins } = slippingOf(drift);
  const found = [...zones.map((zone) => zoneSentence(zone, words)), ...pinSentence(pins, words)];
  return found.length > 0 ? [...found, words.verdict.notTheSeason] : suspects(drift, words);
}

function zoneSentence(
  { fromMidi, toMidi, centsPerYear, probability, isAccelerating }: Zone,
  { verdict: words }: ReportWords,
) {
  const rate = formatCentsSize(centsPerYear);
  const flat =
    fromMidi === toMidi
      ? words.zoneOfOneNote(formatNote(fromMidi), rate)
      : words.zone(formatNoteRange(fromMidi, toMidi), rate);
  return `${flat}${isAccelerating ? words.faster : ''}${words.zoneCertainty(formatProbability(probability))}`;
}

function pinSentence(pins: readonly JudgedPin[], words: ReportWords): string[] {
  if (pins.length === 0) return [];
  const names = pins.map((pin) => {
    const { centsPerYear, probability } = pin.slip;
    return words.verdict.pin(
      stringName(pin, words),
      formatCentsSize(centsPerYear ?? 0),
      formatProbability(probability ?? 0),
    );
  });
  return [words.verdict.pins(fewNames(names, words), pins.length === 1)];
}

function suspects({ pins }: Drift, words: ReportWords): string[] {
  const suspected = suspectsOf(pins);
  if (suspected.length === 0) return [];
  return [
    words.verdict.suspects(
      fewNames(
        suspected.map((pin) => stringName(pin, words)),
        words,
      ),
      suspected.length === 1,
    ),
  ];
}

/** Likely to slip and not yet certain. */
export function suspectsOf(pins: readonly JudgedPin[]): JudgedPin[] {
  return pins.filter((pin) => !pin.isFlagged && (pin.slip.probability ?? 0) > SUSPECT);
}

function others({ pins, zones, verdict }: Drift, { verdict: words }: ReportWords): string[] {
  const ruledOut = verdict.slipRuledOutAboveCentsPerYear;
  const steady = pins.filter(
    (pin) => !pin.isFlagged && (pin.slip.probability ?? 1) < SUSPECT && !isWithin(pin.midi, zones),
  ).length;
  return ruledOut === null || steady === 0 ? [] : [words.others(steady, formatCentsSize(ruledOut))];
}

function notEnough({ intervals, verdict }: Drift, { verdict: words }: ReportWords): string[] {
  const { count, years } = comparisons(intervals);
  if (count === 0) return [words.noComparison];
  const ruledOut = verdict.slipRuledOutAboveCentsPerYear;
  return [
    words.tooLittle(count, formatYears(years)),
    ...(ruledOut === null ? [] : [words.couldHide(formatCentsSize(ruledOut))]),
  ];
}

function foundation({ intervals, detail }: Drift, { verdict: words }: ReportWords): string[] {
  const { count, years } = comparisons(intervals);
  return [words.counted(count, formatYears(years)), ...(detail.isHumidityKnown ? [] : [words.humidityUnknown])];
}

function comparisons(intervals: Drift['intervals']) {
  const usable = intervals.filter(({ hasBaseline, medianCents }) => hasBaseline && medianCents !== null);
  return { count: usable.length, years: usable.reduce((sum, interval) => sum + interval.years, 0) };
}
