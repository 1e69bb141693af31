/** The work list of an instrument: groups of decisions, and marking them as done. */
import type { DecisionChoice, StringDecision } from '../../piano/stringingRecords.ts';
import { type WorkGroup, workList } from '../../stringing/decisions/workList.ts';
import { decisionByString } from './deskRows.ts';

/** Only the decision that counts of each string; "leave" asks for nothing and stands last. */
export function workGroups(decisions: readonly StringDecision[]): WorkGroup[] {
  return workList([...decisionByString(decisions).values()]);
}

/** Open ones first, each from the lowest string up. */
export function rowsOfGroup({ open, done }: WorkGroup): StringDecision[] {
  const byString = (a: StringDecision, b: StringDecision) => a.midi - b.midi || a.stringPosition - b.stringPosition;
  return [...open, ...done].sort(byString);
}

/** What is left alone needs no doing. */
export function asksForWork(choice: DecisionChoice): boolean {
  return choice !== 'leave';
}

/** Of the work that asks for doing. */
export function progressOf(groups: readonly WorkGroup[]): { readonly done: number; readonly all: number } {
  const asked = groups.filter(({ choice }) => asksForWork(choice));
  const done = asked.reduce((sum, group) => sum + group.done.length, 0);
  return { done, all: done + asked.reduce((sum, { open }) => sum + open.length, 0) };
}

/** Groups whose doing changes wire or pins, which settling and pins are counted from. */
export function changesWireOrPin(choice: DecisionChoice): boolean {
  return choice === 'replace wire' || choice === 'replace pin';
}
