/**
 * Takes that the records refused, for want of room say. They are held as long as the page lives, also while another screen is
 * open, so that going back to the survey finds them again.
 */
import type { SurveyId } from '../piano/ids.ts';
import type { Take } from '../piano/instrument.ts';

const held = new Map<SurveyId, readonly Take[]>();

export function heldTakes(surveyId: SurveyId): readonly Take[] {
  return held.get(surveyId) ?? [];
}

/** Returns what is held of the take's survey now; so does releaseTake. */
export function holdTake(take: Take): readonly Take[] {
  return keep(take.surveyId, [...without(take), take]);
}

export function releaseTake(take: Take): readonly Take[] {
  return keep(take.surveyId, without(take));
}

function without(take: Take): readonly Take[] {
  return heldTakes(take.surveyId).filter((other) => other.id !== take.id);
}

function keep(surveyId: SurveyId, takes: readonly Take[]): readonly Take[] {
  held.set(surveyId, takes);
  return takes;
}
