/** The verdict in words: one sentence with how sure it is, what speaks against it, and what would settle it. */
import { formatNoteRange } from '../../piano/format.ts';
import { formatProbability, formatRate, formatSpeed } from '../../piano/formatStability.ts';
import type { Drift } from '../../stability/drift/analyseDrift.ts';
import { isLimit } from '../../stability/drift/verdictGrounds.ts';
import { type NextEvidence, nextEvidence, slipCertainty, WORTH_A_LOOK } from '../../stability/nextEvidence.ts';
import { texts } from '../../ui/texts.ts';
import { groundWords } from './groundWords.ts';
import { stringList, stringNamer } from './stringNames.ts';

const words = texts.stability.verdict;

export function verdictSentence(drift: Drift): string {
  const { state, slipRuledOutAboveCentsPerYear } = drift.verdict;
  switch (state) {
    case 'holding':
      return words.holding(formatSpeed(slipRuledOutAboveCentsPerYear ?? 0));
    case 'giving way':
      return words.givingWay(capitalised(blamed(drift)), formatProbability(slipCertainty(drift)));
    case 'watch':
      return watchSentence(drift);
    case 'not enough evidence':
      return words.notEnough;
  }
}

function watchSentence(drift: Drift): string {
  const surest = bySurest(drift)[0];
  if (!surest) return words.watchPlain;
  return words.watch(stringNamer(drift.pins)(surest), formatProbability(surest.slip.probability));
}

function blamed({ zones, pins }: Drift): string {
  const alone = pins.filter(
    (pin) => pin.isFlagged && !zones.some((zone) => pin.midi >= zone.fromMidi && pin.midi <= zone.toMidi),
  );
  const parts = zones.map((zone) => words.zone(formatNoteRange(zone.fromMidi, zone.toMidi)));
  if (alone.length > 0) parts.push(words.singlePins(alone.length));
  return parts.join(words.and);
}

function capitalised(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

function bySurest({ pins }: Drift) {
  return [...pins].sort((a, b) => (b.slip.probability ?? 0) - (a.slip.probability ?? 0));
}

export function supportingReasons(drift: Drift): string[] {
  // What the sentence of a holding block says already is not said again.
  const grounds = drift.verdict.grounds.filter((ground) => !isLimit(ground) && ground.kind !== 'no-string-slips');
  return grounds.map((ground) => groundWords(ground, drift));
}

const MOST_SUSPECTS = 3;

/** What limits the verdict: its own reservations, and strings that are doubtful although nothing is blamed on them. */
export function contraryReasons(drift: Drift): string[] {
  const { verdict, outliers } = drift;
  const own = verdict.grounds.filter(isLimit).map((ground) => groundWords(ground, drift));
  const suspects = bySurest(drift)
    .filter((pin) => !pin.isFlagged && (pin.slip.probability ?? 0) >= WORTH_A_LOOK)
    .slice(0, MOST_SUSPECTS)
    .map((pin) =>
      words.suspect(
        stringNamer(drift.pins)(pin),
        formatRate(pin.slip.centsPerYear, pin.slip.standardUncertainty),
        formatProbability(pin.slip.probability),
      ),
    );
  const aside = outliers.length > 0 ? [words.outliers(outliers.length)] : [];
  return verdict.state === 'holding' ? [...suspects, ...own, ...aside] : [...own, ...aside];
}

export function ruledOutSentence({ verdict }: Drift): string {
  const above = verdict.slipRuledOutAboveCentsPerYear;
  return above === null ? words.ruledOutNothing : words.ruledOutAbove(formatSpeed(above));
}

export function nextSentences(drift: Drift, thresholdCentsPerYear: number): string[] {
  const steps = nextEvidence(drift, thresholdCentsPerYear);
  return steps.length === 0
    ? [words.nextNothing]
    : steps.map((step) => nextSentence(step, drift, thresholdCentsPerYear));
}

function nextSentence(step: NextEvidence, { pins }: Drift, thresholdCentsPerYear: number): string {
  const { next } = words;
  switch (step.kind) {
    case 'both-surveys':
      return next['both-surveys'];
    case 'more-intervals':
      return next['more-intervals'](step.visitCount);
    case 'more-time':
      return next['more-time'](step.months);
    case 'narrow':
      return step.visitCount === null
        ? next.narrowLong(formatSpeed(thresholdCentsPerYear))
        : next.narrow(step.visitCount, step.monthsApart, formatSpeed(thresholdCentsPerYear));
    case 'note-humidity':
      return next['note-humidity'];
    case 'torque': {
      const names = stringList(pins, step.pins);
      return step.isFlagged ? next.torqueFlagged(names) : next.torqueDoubtful(names);
    }
  }
}
