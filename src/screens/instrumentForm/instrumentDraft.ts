/** An instrument while it is being typed: text as it stands in the fields, and what it means once all of it makes sense. */
import { COMPASS_85, COMPASS_88, type Compass, isInCompass } from '../../piano/compass.ts';
import { formatNote } from '../../piano/format.ts';
import { shownLength, shownUnits, typedLengthMm } from '../../piano/formatUnits.ts';
import type { Instrument, InstrumentKind, PinBlockKind } from '../../piano/instrument.ts';
import { nameToMidi } from '../../piano/note.ts';
import { readFigure, writeFigure } from '../../piano/readFigure.ts';
import { PIN_DIAMETER_RANGE_MM } from '../../piano/tuningPin.ts';

export type CompassChoice = '88' | '85' | 'other';
export type PinBlockChoice = PinBlockKind | 'not said';

export type InstrumentDraft = {
  readonly name: string;
  readonly kind: InstrumentKind;
  readonly builtYear: string;
  readonly serialNumber: string;
  readonly compassChoice: CompassChoice;
  readonly lowest: string;
  readonly highest: string;
  readonly bassTop: string;
  readonly struts: string;
  readonly pinBlock: string;
  readonly pinBlockKind: PinBlockChoice;
  /** In the unit that was chosen. */
  readonly pinDiameter: string;
  readonly ownerName: string;
  readonly ownerAddress: string;
  readonly remark: string;
};

export type DraftFault =
  | 'name-missing'
  | 'year-not-a-year'
  | 'lowest-not-a-note'
  | 'highest-not-a-note'
  | 'compass-reversed'
  | 'bass-top-not-a-note'
  | 'bass-top-outside'
  | 'strut-not-a-note'
  | 'strut-outside'
  | 'pin-diameter-not-a-number'
  | 'pin-diameter-not-in-inches';

export type DraftFaults = Partial<Record<keyof InstrumentDraft, DraftFault>>;
export type DraftInstrument = Omit<Instrument, 'id' | 'isDemonstration'>;
export type ReadDraft =
  | { readonly isSound: true; readonly instrument: DraftInstrument }
  | { readonly isSound: false; readonly faults: DraftFaults };

export const EMPTY_DRAFT: InstrumentDraft = {
  name: '',
  kind: 'grand',
  builtYear: '',
  serialNumber: '',
  compassChoice: '88',
  lowest: 'A0',
  highest: 'C8',
  bassTop: '',
  struts: '',
  pinBlock: '',
  pinBlockKind: 'not said',
  pinDiameter: '',
  ownerName: '',
  ownerAddress: '',
  remark: '',
};

/** The stored instrument with what the form says in its place; what the form does not ask for stays as it was. */
export function withDraft(stored: Instrument, draft: DraftInstrument): Instrument {
  const {
    pinBlockKind: _pinBlockKind,
    tuningPinDiameterMm: _tuningPinDiameterMm,
    ownerName: _ownerName,
    ownerAddress: _ownerAddress,
    ...kept
  } = stored;
  return { ...kept, ...draft };
}

export function instrumentToDraft(instrument: Instrument): InstrumentDraft {
  const { compass } = instrument;
  return {
    name: instrument.name,
    kind: instrument.kind,
    builtYear: instrument.builtYear === null ? '' : String(instrument.builtYear),
    serialNumber: instrument.serialNumber,
    compassChoice: isSame(compass, COMPASS_88) ? '88' : isSame(compass, COMPASS_85) ? '85' : 'other',
    lowest: formatNote(compass.lowestMidi),
    highest: formatNote(compass.highestMidi),
    bassTop: instrument.bassBridgeTopMidi === null ? '' : formatNote(instrument.bassBridgeTopMidi),
    struts: instrument.strutsAfterMidi.map(formatNote).join(', '),
    pinBlock: instrument.pinBlock,
    pinBlockKind: instrument.pinBlockKind ?? 'not said',
    pinDiameter: diameterText(instrument.tuningPinDiameterMm),
    ownerName: instrument.ownerName ?? '',
    ownerAddress: instrument.ownerAddress ?? '',
    remark: instrument.remark,
  };
}

/** The instrument that the fields describe, or what is wrong with which field. */
export function readDraft(draft: InstrumentDraft): ReadDraft {
  const faults: DraftFaults = {};
  if (draft.name.trim() === '') faults.name = 'name-missing';
  const builtYear = readYear(draft.builtYear);
  if (builtYear === undefined) faults.builtYear = 'year-not-a-year';
  const compass = readCompass(draft, faults);
  const bassBridgeTopMidi = readBassTop(draft.bassTop, compass, faults);
  const strutsAfterMidi = readStruts(draft.struts, compass, faults);
  const block = readBlock(draft, faults);
  if (Object.keys(faults).length > 0 || compass === undefined || builtYear === undefined)
    return { isSound: false, faults };
  const { kind } = draft;
  const [name, serialNumber] = [draft.name.trim(), draft.serialNumber.trim()];
  const remark = draft.remark.trim();
  const notes = { compass, bassBridgeTopMidi, strutsAfterMidi };
  return {
    isSound: true,
    instrument: { name, kind, builtYear, serialNumber, ...notes, ...block, ...readOwner(draft), remark },
  };
}

type Block = Pick<Instrument, 'pinBlock' | 'pinBlockKind' | 'tuningPinDiameterMm'>;

/** What was not said is absent. */
function readBlock({ pinBlock, pinBlockKind, pinDiameter }: InstrumentDraft, faults: DraftFaults): Block {
  const tuningPinDiameterMm = readDiameter(pinDiameter, faults);
  return {
    pinBlock: pinBlock.trim(),
    ...(pinBlockKind === 'not said' ? {} : { pinBlockKind }),
    ...(tuningPinDiameterMm === null ? {} : { tuningPinDiameterMm }),
  };
}

/** What was not said is absent. */
function readOwner(draft: InstrumentDraft): Pick<Instrument, 'ownerName' | 'ownerAddress'> {
  const [ownerName, ownerAddress] = [draft.ownerName.trim(), draft.ownerAddress.trim()];
  return { ...(ownerName === '' ? {} : { ownerName }), ...(ownerAddress === '' ? {} : { ownerAddress }) };
}

/** So fine that a form sent as it was opened changes nothing. */
function diameterText(diameterMm: number | undefined): string {
  return diameterMm === undefined ? '' : writeFigure(Math.round(100_000 * shownLength(diameterMm)) / 100_000);
}

/** Null for an empty field and for a faulty one. */
function readDiameter(text: string, faults: DraftFaults): number | null {
  const typed = readFigure(text);
  if (typed === null) return null;
  const value = typed === undefined ? 0 : typedLengthMm(typed);
  if (value >= PIN_DIAMETER_RANGE_MM.least && value <= PIN_DIAMETER_RANGE_MM.most) return value;
  faults.pinDiameter = shownUnits().length === 'in' ? 'pin-diameter-not-in-inches' : 'pin-diameter-not-a-number';
  return null;
}

const EARLIEST_YEAR = 1700; // the first pianos were built about then
const LATEST_YEAR = 2100;

/** Null for an empty field, undefined for what is no year. */
function readYear(text: string): number | null | undefined {
  if (text.trim() === '') return null;
  const year = /^\d{4}$/.test(text.trim()) ? Number(text) : 0;
  return year >= EARLIEST_YEAR && year <= LATEST_YEAR ? year : undefined;
}

function readCompass(draft: InstrumentDraft, faults: DraftFaults): Compass | undefined {
  if (draft.compassChoice === '88') return COMPASS_88;
  if (draft.compassChoice === '85') return COMPASS_85;
  const lowestMidi = nameToMidi(draft.lowest);
  const highestMidi = nameToMidi(draft.highest);
  if (lowestMidi === undefined) faults.lowest = 'lowest-not-a-note';
  if (highestMidi === undefined) faults.highest = 'highest-not-a-note';
  if (lowestMidi === undefined || highestMidi === undefined) return undefined;
  if (lowestMidi >= highestMidi) faults.highest = 'compass-reversed';
  return { lowestMidi, highestMidi };
}

function readBassTop(text: string, compass: Compass | undefined, faults: DraftFaults): number | null {
  if (text.trim() === '') return null;
  const midi = nameToMidi(text);
  if (midi === undefined) faults.bassTop = 'bass-top-not-a-note';
  else if (compass && !isInCompass(compass, midi)) faults.bassTop = 'bass-top-outside';
  return midi ?? null;
}

function readStruts(text: string, compass: Compass | undefined, faults: DraftFaults): number[] {
  const names = text.split(/[\s,;]+/).filter((name) => name !== '');
  const notes = names.map(nameToMidi);
  if (notes.includes(undefined)) faults.struts = 'strut-not-a-note';
  const known = [...new Set(notes.filter((midi) => midi !== undefined))].sort((a, b) => a - b);
  if (compass && known.some((midi) => !isInCompass(compass, midi))) faults.struts ??= 'strut-outside';
  return known;
}

function isSame(a: Compass, b: Compass): boolean {
  return a.lowestMidi === b.lowestMidi && a.highestMidi === b.highestMidi;
}
