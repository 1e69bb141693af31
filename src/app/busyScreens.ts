import type { Route } from '../ui/routes.ts';

/** Screens on which something is under way that loading the page anew, or closing the records, would break off. */
const BUSY: readonly Route['screen'][] = [
  'recording',
  'string',
  'microphone-clock',
  'new-instrument',
  'edit-instrument',
  'new-visit',
  'edit-visit',
  'records',
];

export function isBusyScreen(screen: Route['screen']): boolean {
  return BUSY.includes(screen);
}
