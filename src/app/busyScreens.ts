import type { Route } from '../ui/routes.ts';

export type UnderWay =
  | 'nothing'
  /** Whole archives are read and written: the records stay open, and no newer program is offered. */
  | 'archive'
  /** A recording, or a form whose content is stored at its end: nor is anything offered that loads the page anew or leads away. */
  | 'entry';

const BUSY: Readonly<Partial<Record<Route['screen'], UnderWay>>> = {
  records: 'archive',
  recording: 'entry',
  string: 'entry',
  'microphone-clock': 'entry',
  'new-instrument': 'entry',
  'edit-instrument': 'entry',
  'new-visit': 'entry',
  'edit-visit': 'entry',
};

/** What may be under way on a screen, that loading the page anew, or closing the records, would break off. */
export function underWayOn(screen: Route['screen']): UnderWay {
  return BUSY[screen] ?? 'nothing';
}
