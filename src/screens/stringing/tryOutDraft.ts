/** The form of “change one thing”, as it is typed and as it is read. */
import { type Compass, isInCompass } from '../../piano/compass.ts';
import { formatNoteRange, formatPitchStandard, formatSigned } from '../../piano/format.ts';
import { formatGrowth, formatWireMm } from '../../piano/formatStringing.ts';
import { nameToMidi } from '../../piano/note.ts';
import { numberIn, readScheduleCell } from '../../piano/wireScheduleCell.ts';
import { texts } from '../../ui/texts.ts';
import { typedPitch } from './newSchedules.ts';
import type { ChangeKind, TriedChange } from './tryChange.ts';

const words = texts.stringing.tryOut;

export type TryOutDraft = {
  readonly from: string;
  readonly to: string;
  readonly kind: ChangeKind;
  readonly amount: string;
};

export const FIRST_TRY: Pick<TryOutDraft, 'kind' | 'amount'> = { kind: 'size', amount: '' };

export type TryOutFault = { readonly field: 'from' | 'to' | 'amount'; readonly words: string };

export type ReadTry =
  | { readonly isSound: true; readonly change: TriedChange }
  /** Null where nothing was typed yet. */
  | { readonly isSound: false; readonly fault: TryOutFault | null };

export function readTry(draft: TryOutDraft, compass: Compass, compassText: string): ReadTry {
  if (draft.amount.trim() === '') return { isSound: false, fault: null };
  const [fromMidi, toMidi] = [draft.from, draft.to].map(nameToMidi);
  const isPitch = draft.kind === 'pitch';
  if (!isPitch && (fromMidi === undefined || !isInCompass(compass, fromMidi)))
    return fault('from', words.noteFault(compassText));
  if (!isPitch && (toMidi === undefined || !isInCompass(compass, toMidi)))
    return fault('to', words.noteFault(compassText));
  const notes = { fromMidi: fromMidi ?? compass.lowestMidi, toMidi: toMidi ?? compass.highestMidi };
  if (!isPitch && notes.fromMidi > notes.toMidi) return fault('to', words.orderFault);
  const change = changeOf(draft.kind, draft.amount);
  return change ? { isSound: true, change: { ...notes, ...change } } : fault('amount', words.amountFaults[draft.kind]);
}

function fault(field: TryOutFault['field'], text: string): ReadTry {
  return { isSound: false, fault: { field, words: text } };
}

const MOST_SIZES = 6;
const MOST_LENGTH_PERCENT = 30;

type Change = TriedChange extends infer Each
  ? Each extends unknown
    ? Omit<Each, 'fromMidi' | 'toMidi'>
    : never
  : never;

function changeOf(kind: ChangeKind, amount: string): Change | undefined {
  const value = numberIn(amount.replace('−', '-').replace('%', ''));
  switch (kind) {
    case 'size':
      return value !== undefined && Number.isInteger(2 * value) && value !== 0 && Math.abs(value) <= MOST_SIZES
        ? { kind, sizes: value }
        : undefined;
    case 'diameter': {
      const reading = readScheduleCell('wireDiameterMm', amount);
      const diameterMm = reading.ok ? reading.change.wireDiameterMm : null;
      return diameterMm == null ? undefined : { kind, diameterMm };
    }
    case 'length':
      return value !== undefined && value !== 0 && Math.abs(value) <= MOST_LENGTH_PERCENT
        ? { kind, share: value / 100 }
        : undefined;
    case 'grade':
      return { kind, wireGrade: amount.trim() };
    case 'pitch': {
      const pitchStandardHz = typedPitch(amount);
      return pitchStandardHz === undefined ? undefined : { kind, pitchStandardHz };
    }
  }
}

/** What was tried, in a few words. @example // 'C5 to B5, wire by +1 sizes' */
export function changeWords(change: TriedChange): string {
  const notes = formatNoteRange(change.fromMidi, change.toMidi);
  switch (change.kind) {
    case 'size':
      return words.said.size(notes, formatSigned(change.sizes, Number.isInteger(change.sizes) ? 0 : 1));
    case 'diameter':
      return words.said.diameter(notes, formatWireMm(change.diameterMm));
    case 'length':
      return words.said.length(notes, formatGrowth(change.share));
    case 'grade':
      return words.said.grade(notes, change.wireGrade);
    case 'pitch':
      return formatPitchStandard(change.pitchStandardHz);
  }
}
