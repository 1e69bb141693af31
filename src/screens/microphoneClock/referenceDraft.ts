/** A reference while it is being typed, and what the fields mean once all of them make sense. */
import type { ClockReference } from '../../piano/clock.ts';

export type ReferenceDraft = {
  readonly kind: ClockReference['kind'];
  readonly frequency: string;
  readonly uncertainty: string;
  readonly statedAt: string;
  readonly temperature: string;
};

export type ReferenceFault = 'frequency-out-of-range' | 'uncertainty-out-of-range' | 'temperature-out-of-range';
export type ReferenceFaults = Partial<Record<keyof ReferenceDraft, ReferenceFault>>;
export type ReadReference =
  | { readonly isSound: true; readonly reference: ClockReference }
  | { readonly isSound: false; readonly faults: ReferenceFaults };

/** Filled in beforehand: what a good generator shows to the last digit, and what a common fork is sold as (from memory). */
const USUAL_UNCERTAINTY: Record<ClockReference['kind'], string> = { tone: '0.001', fork: '0.1' };

export function newReferenceDraft(kind: ClockReference['kind']): ReferenceDraft {
  return { kind, frequency: '440', uncertainty: USUAL_UNCERTAINTY[kind], statedAt: '20', temperature: '' };
}

/** Another kind of reference is known otherwise; its frequency stays as typed. */
export function ofKind(draft: ReferenceDraft, kind: ClockReference['kind']): ReferenceDraft {
  return { ...draft, kind, uncertainty: USUAL_UNCERTAINTY[kind] };
}

const FREQUENCY_HZ = { least: 100, most: 4000 };
/** What is known no better than this says nothing about a clock. */
const MOST_UNCERTAINTY_HZ = 10;
const TEMPERATURE_C = { least: -10, most: 45 };

export function readReference(draft: ReferenceDraft): ReadReference {
  const faults: ReferenceFaults = {};
  const statedHz = numberIn(draft.frequency, FREQUENCY_HZ.least, FREQUENCY_HZ.most);
  if (statedHz === null) faults.frequency = 'frequency-out-of-range';
  const statedStandardUncertaintyHz = numberIn(draft.uncertainty, 0, MOST_UNCERTAINTY_HZ);
  if (statedStandardUncertaintyHz === null) faults.uncertainty = 'uncertainty-out-of-range';
  const isFork = draft.kind === 'fork';
  const statedAtC = isFork ? numberIn(draft.statedAt, TEMPERATURE_C.least, TEMPERATURE_C.most) : null;
  const temperatureC = isFork ? numberIn(draft.temperature, TEMPERATURE_C.least, TEMPERATURE_C.most) : null;
  if (isFork && statedAtC === null) faults.statedAt = 'temperature-out-of-range';
  if (isFork && temperatureC === null) faults.temperature = 'temperature-out-of-range';
  if (statedHz === null || statedStandardUncertaintyHz === null || Object.keys(faults).length > 0)
    return { isSound: false, faults };
  return {
    isSound: true,
    reference: { kind: draft.kind, statedHz, statedStandardUncertaintyHz, statedAtC, temperatureC },
  };
}

/** With point or comma. Null for what is no number in the range, an empty field included. */
function numberIn(text: string, least: number, most: number): number | null {
  const tidy = text.trim().replace(',', '.').replace('−', '-');
  if (!/^-?\d+(\.\d+)?$/.test(tidy)) return null;
  const value = Number(tidy);
  return value >= least && value <= most ? value : null;
}
