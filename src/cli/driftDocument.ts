/** The judgement of a history as the JSON document of the command line: units in the keys, null for what is not known. */
import { midiToName } from '../piano/note.ts';
import type { Drift } from '../stability/drift/analyseDrift.ts';

export function driftDocument(drift: Drift) {
  return {
    intervals: drift.intervals.map((interval) => ({
      from: interval.fromDate,
      to: interval.toDate,
      years: round(interval.years, 3),
      rhChangePercent: orNull(interval.humidityChangePct, 1),
      medianCents: orNull(interval.medianCents, 3),
      missing: interval.missingCount,
      hasBaseline: interval.hasBaseline,
    })),
    humidity: {
      centsPerPercentRh: drift.humidity.map(({ midi, centsPerPct, standardUncertainty }) => ({
        note: midiToName(midi),
        value: round(centsPerPct, 4),
        valueU: round(standardUncertainty, 4),
      })),
    },
    settling: drift.settling && {
      since: drift.settling.since,
      firstYearCents: round(drift.settling.firstYearCents, 2),
      remainingCentsPerYear: round(drift.settling.remainingCentsPerYear, 3),
    },
    pins: drift.pins.map(({ midi, stringPosition, slip, isFlagged }) => ({
      note: midiToName(midi),
      string: stringPosition,
      slipCentsPerYear: orNull(slip.centsPerYear, 4),
      slipCentsPerYearU: orNull(slip.standardUncertainty, 4),
      probability: orNull(slip.probability, 4),
      flagged: isFlagged,
    })),
    zones: drift.zones.map((zone) => ({
      fromNote: midiToName(zone.fromMidi),
      toNote: midiToName(zone.toMidi),
      slipCentsPerYear: round(zone.centsPerYear, 3),
      slipCentsPerYearU: round(zone.standardUncertainty, 3),
      probability: round(zone.probability, 4),
      accelerating: zone.isAccelerating,
    })),
    outliers: drift.outliers.map((outlier) => ({
      visitDate: outlier.visitedOn,
      note: midiToName(outlier.midi),
      string: outlier.stringPosition,
      cents: round(outlier.cents, 2),
      reason: outlier.reason,
    })),
    verdict: {
      state: drift.verdict.state,
      reasons: drift.verdict.reasons,
      slipRuledOutAboveCentsPerYear: drift.verdict.slipRuledOutAboveCentsPerYear,
    },
  };
}

function round(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}

function orNull(value: number | null, digits: number): number | null {
  return value === null ? null : round(value, digits);
}
