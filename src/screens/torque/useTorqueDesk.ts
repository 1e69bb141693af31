import { useState } from 'react';
import type { TorqueId } from '../../piano/ids.ts';
import type { TorqueReading } from '../../piano/stringingRecords.ts';
import { newId } from '../../records/newId.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFaultValue } from '../../ui/WriteFault.tsx';
import type { DeskSaid } from './deskWords.ts';
import { type PinAddress, standingReading } from './pinRound.ts';
import { type StoredTorque, storeTorque } from './storeTorque.ts';
import { readTyped } from './typedTorque.ts';
import { type DeskRound, useDeskRound } from './useDeskRound.ts';
import type { VisitTorquePage } from './useVisitTorque.ts';

export type TorqueDesk = Pick<DeskRound, 'settings' | 'set' | 'pins' | 'pin' | 'move' | 'goToPin'> & {
  /** What this pin has in the direction that is set. */
  readonly standing: TorqueReading | undefined;
  readonly typed: { readonly value: string; readonly remark: string };
  readonly type: (change: Partial<TorqueDesk['typed']>) => void;
  readonly said: DeskSaid | null;
  readonly writeFault: WriteFaultValue | null;
  /** Stores what is typed and goes on, goes to the note that is typed, or passes the pin over where nothing is. */
  readonly enter: () => Promise<void>;
  readonly goToNote: (midi: number) => void;
  /** Takes the last entry back and stands at its pin again; null where none was made here. */
  readonly undo: (() => Promise<void>) | null;
};

type Entry = { readonly pin: PinAddress; readonly direction: TorqueReading['direction'] } & Pick<StoredTorque, 'undo'>;

const NOTHING_TYPED = { value: '', remark: '' };

export function useTorqueDesk(records: Records, page: VisitTorquePage): TorqueDesk {
  const round = useDeskRound(page);
  const { settings, pin } = round;
  const [typed, setTyped] = useState(NOTHING_TYPED);
  const [said, setSaid] = useState<DeskSaid | null>(null);
  const [entries, setEntries] = useState<readonly Entry[]>([]);
  const [writeFault, setWriteFault] = useState<WriteFaultValue | null>(null);
  const standing = pin ? standingReading(page.readings, pin, settings.direction) : undefined;
  const startAfresh = (news: DeskSaid | null = null) => {
    setTyped(NOTHING_TYPED);
    setSaid(news);
  };
  const move = (step: 1 | -1) => {
    round.move(step);
    startAfresh();
  };
  const goToNote = (midi: number) => {
    if (round.goToNote(midi)) startAfresh();
    else setSaid({ kind: 'fault', fault: 'note-not-asked', torqueNm: null });
  };
  const store = async (at: PinAddress, torqueNm: number, isVeryLow: boolean) => {
    const reading = newReading(page, at, standing, {
      torqueNm,
      direction: settings.direction,
      remark: typed.remark.trim(),
    });
    const outcome = await storeTorque(records, reading, standing);
    setWriteFault(outcome.stored ? null : outcome);
    if (!outcome.stored) return;
    setEntries((before) => [...before, { pin: at, direction: reading.direction, undo: outcome.undo }]);
    const formerNm = standing?.torqueNm ?? null;
    startAfresh({ kind: 'stored', pin: at, torqueNm, formerNm, isVeryLow, isLast: round.isLast });
    round.move(1);
  };
  const enter = async () => {
    const read = readTyped(typed.value, settings.unit, page.instrument.compass);
    if (read.kind === 'nothing') move(1);
    else if (read.kind === 'note') goToNote(read.midi);
    else if (read.kind === 'fault') setSaid({ kind: 'fault', fault: read.fault, torqueNm: read.torqueNm });
    else if (pin) await store(pin, read.torqueNm, read.isVeryLow);
  };
  const type = (change: Partial<TorqueDesk['typed']>) => {
    setTyped((before) => ({ ...before, ...change }));
    if (said?.kind === 'fault') setSaid(null);
  };
  const goToPin: DeskRound['goToPin'] = (wanted, direction) => {
    round.goToPin(wanted, direction);
    startAfresh();
  };
  const undoLast = async (last: Entry) => {
    const fault = await last.undo();
    setWriteFault(fault);
    if (fault) return;
    setEntries((before) => before.filter((entry) => entry !== last));
    goToPin(last.pin, last.direction);
    setSaid({ kind: 'undone', pin: last.pin });
  };
  const last = entries.at(-1);
  const undo = last ? () => undoLast(last) : null;
  return { ...round, goToPin, move, undo, standing, typed, type, said, writeFault, enter, goToNote };
}

/** In the place of what stood there, whose remark stays where no new one is typed. */
function newReading(
  { instrument, visit }: VisitTorquePage,
  { midi, stringPosition }: PinAddress,
  former: TorqueReading | undefined,
  said: Pick<TorqueReading, 'torqueNm' | 'direction' | 'remark'>,
): TorqueReading {
  return {
    id: former?.id ?? newId<TorqueId>(),
    instrumentId: instrument.id,
    visitId: visit.id,
    midi,
    stringPosition,
    ...said,
    remark: said.remark || (former?.remark ?? ''),
  };
}
