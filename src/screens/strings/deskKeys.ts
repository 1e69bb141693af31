/** What a key means at the desk of decisions. */
import type { DecisionChoice } from '../../piano/stringingRecords.ts';

/** In the order of the number keys, from 1 on. */
export const CHOICES: readonly DecisionChoice[] = ['leave', 'bridge work', 'replace wire', 'replace pin', 'look again'];

export type DeskAction =
  | { readonly kind: 'move'; readonly by: number; readonly isMarking: boolean }
  | { readonly kind: 'end'; readonly end: 'first' | 'last' }
  | { readonly kind: 'mark' }
  | { readonly kind: 'unmark-all' }
  | { readonly kind: 'decide'; readonly choice: DecisionChoice }
  | { readonly kind: 'take-suggestion' }
  | { readonly kind: 'clear' }
  | { readonly kind: 'undo' };

const PAGE = 10;

type Key = {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
  readonly shiftKey: boolean;
};

/** Undefined: the key means nothing here and is left to the browser. */
export function deskActionOf({ key, ctrlKey, metaKey, altKey, shiftKey }: Key): DeskAction | undefined {
  if (altKey) return undefined;
  if (ctrlKey || metaKey) return key.toLowerCase() === 'z' && !shiftKey ? { kind: 'undo' } : undefined;
  const choice = CHOICES[Number(key) - 1];
  if (choice) return { kind: 'decide', choice };
  switch (key) {
    case 'ArrowDown':
      return { kind: 'move', by: 1, isMarking: shiftKey };
    case 'ArrowUp':
      return { kind: 'move', by: -1, isMarking: shiftKey };
    case 'PageDown':
      return { kind: 'move', by: PAGE, isMarking: false };
    case 'PageUp':
      return { kind: 'move', by: -PAGE, isMarking: false };
    case 'Home':
      return { kind: 'end', end: 'first' };
    case 'End':
      return { kind: 'end', end: 'last' };
    case ' ':
      return { kind: 'mark' };
    case 'Escape':
      return { kind: 'unmark-all' };
    case 'Enter':
      return { kind: 'take-suggestion' };
    case '0':
    case 'Delete':
    case 'Backspace':
      return { kind: 'clear' };
    default:
      return undefined;
  }
}
