/** A reference while it is being typed, and what the fields mean once all of them make sense. */
import type { ClockReference } from '../../piano/clock.ts';
import { shownTemperature, shownUnits, typedTemperatureC } from '../../piano/formatUnits.ts';
import { readFigureWithin, writeFigure } from '../../piano/readFigure.ts';

export type ReferenceDraft = {
  readonly kind: ClockReference['kind'];
  readonly frequency: string;
  readonly uncertainty: string;
  readonly statedAt: string;
  readonly temperature: string;
};

export type ReferenceFault =
  | 'frequency-out-of-range'
  | 'uncertainty-out-of-range'
  | 'temperature-out-of-range'
  | 'temperature-not-in-fahrenheit';
export type ReferenceFaults = Partial<Record<keyof ReferenceDraft, ReferenceFault>>;
export type ReadReference =
  | { readonly isSound: true; readonly reference: ClockReference }
  | { readonly isSound: false; readonly faults: ReferenceFaults };

/** Filled in beforehand: what a good generator shows to the last digit, and what a common fork is sold as (from memory). */
const USUAL_UNCERTAINTY_HZ: Record<ClockReference['kind'], number> = { tone: 0.001, fork: 0.1 };
/** At which forks are stated. */
const USUAL_TEMPERATURE_C = 20;

export function newReferenceDraft(kind: ClockReference['kind']): ReferenceDraft {
  const statedAt = writeFigure(shownTemperature(USUAL_TEMPERATURE_C));
  return { kind, frequency: '440', uncertainty: writeFigure(USUAL_UNCERTAINTY_HZ[kind]), statedAt, temperature: '' };
}

/** Another kind of reference is known otherwise; its frequency stays as typed. */
export function ofKind(draft: ReferenceDraft, kind: ClockReference['kind']): ReferenceDraft {
  return { ...draft, kind, uncertainty: writeFigure(USUAL_UNCERTAINTY_HZ[kind]) };
}

const FREQUENCY_HZ = { least: 100, most: 4000 };
/** What is known no better than this says nothing about a clock. */
const MOST_UNCERTAINTY_HZ = 10;
const TEMPERATURE_C = { least: -10, most: 45 };
const TEMPERATURE_F = { least: 14, most: 113 };

export function readReference(draft: ReferenceDraft): ReadReference {
  const faults: ReferenceFaults = {};
  const statedHz = numberIn(draft.frequency, FREQUENCY_HZ.least, FREQUENCY_HZ.most);
  if (statedHz === null) faults.frequency = 'frequency-out-of-range';
  const statedStandardUncertaintyHz = numberIn(draft.uncertainty, 0, MOST_UNCERTAINTY_HZ);
  if (statedStandardUncertaintyHz === null) faults.uncertainty = 'uncertainty-out-of-range';
  const isFork = draft.kind === 'fork';
  const statedAtC = isFork ? temperatureIn(draft.statedAt) : null;
  const temperatureC = isFork ? temperatureIn(draft.temperature) : null;
  if (isFork && statedAtC === null) faults.statedAt = temperatureFault();
  if (isFork && temperatureC === null) faults.temperature = temperatureFault();
  if (statedHz === null || statedStandardUncertaintyHz === null || Object.keys(faults).length > 0)
    return { isSound: false, faults };
  return {
    isSound: true,
    reference: { kind: draft.kind, statedHz, statedStandardUncertaintyHz, statedAtC, temperatureC },
  };
}

/** Null for what is no number in the range, an empty field included. */
function numberIn(text: string, least: number, most: number): number | null {
  return readFigureWithin(text, least, most) ?? null;
}

/** Typed in the unit that was chosen. */
function temperatureIn(text: string): number | null {
  const { least, most } = shownUnits().temperature === '°F' ? TEMPERATURE_F : TEMPERATURE_C;
  const typed = numberIn(text, least, most);
  return typed === null ? null : typedTemperatureC(typed);
}

function temperatureFault(): ReferenceFault {
  return shownUnits().temperature === '°F' ? 'temperature-not-in-fahrenheit' : 'temperature-out-of-range';
}
