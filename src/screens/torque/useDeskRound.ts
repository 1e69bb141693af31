import { useMemo, useState } from 'react';
import type { TorqueReading } from '../../piano/stringingRecords.ts';
import type { TorqueUnit } from '../../piano/torque.ts';
import { showDeviceUnits, torqueUnit } from '../../ui/deviceUnits.ts';
import { type DeskSettings, notesOfRound } from './deskSettings.ts';
import { firstUnread, isSamePin, type PinAddress, pinRound } from './pinRound.ts';
import type { VisitTorquePage } from './useVisitTorque.ts';

export type DeskRound = {
  readonly settings: DeskSettings;
  readonly set: (change: Partial<DeskSettings>) => void;
  readonly pins: readonly PinAddress[];
  readonly pin: PinAddress | null;
  readonly isLast: boolean;
  readonly move: (step: 1 | -1) => void;
  /** False where the round has no pin of this note. */
  readonly goToNote: (midi: number) => boolean;
  /** Also to a pin that the round does not ask for; moving on comes back to the round. */
  readonly goToPin: (pin: PinAddress, direction: TorqueReading['direction']) => void;
};

const FIRST_SETTINGS = { pins: 'one', direction: 'not noted', notes: 'all', named: '' } as const;

/** The same wrench is read on the other pages too. */
function rememberUnit(unit: TorqueUnit): void {
  torqueUnit.write(unit);
  showDeviceUnits();
}

/** Where the desk stands in its round over the block. */
export function useDeskRound({ instrument, readings, scheduleRows }: VisitTorquePage): DeskRound {
  const [settings, setSettings] = useState<DeskSettings>(() => ({ ...FIRST_SETTINGS, unit: torqueUnit.read() }));
  const roundOf = (wanted: DeskSettings): PinAddress[] => {
    const notes = notesOfRound(instrument, wanted);
    return pinRound(notes.ok ? notes.midis : [], wanted.pins, scheduleRows);
  };
  const { notes, named, pins: pinChoice } = settings;
  // biome-ignore lint/correctness/useExhaustiveDependencies: of the settings only these make the round
  const pins = useMemo(() => roundOf(settings), [instrument, scheduleRows, notes, named, pinChoice]);
  const [place, setPlace] = useState(() => firstUnread(pins, readings));
  const [aside, setAside] = useState<PinAddress | null>(null);
  const last = pins.length - 1;
  const set = (change: Partial<DeskSettings>) => {
    const next = { ...settings, ...change };
    setSettings(next);
    if (change.unit) rememberUnit(change.unit);
    if (!['notes', 'named', 'pins'].some((field) => field in change)) return;
    setPlace(firstUnread(roundOf(next), readings));
    setAside(null);
  };
  const move = (step: 1 | -1) => {
    if (aside) setAside(null);
    else setPlace(Math.max(0, Math.min(place + step, last)));
  };
  const goToNote = (midi: number): boolean => {
    const index = pins.findIndex((other) => other.midi === midi);
    if (index < 0) return false;
    setPlace(index);
    setAside(null);
    return true;
  };
  const goToPin = (wanted: PinAddress, direction: TorqueReading['direction']) => {
    const index = pins.findIndex((other) => isSamePin(other, wanted));
    if (index >= 0) setPlace(index);
    setAside(index < 0 ? wanted : null);
    setSettings({ ...settings, direction });
  };
  const pin = aside ?? pins[Math.min(place, last)] ?? null;
  return { settings, set, pins, pin, isLast: aside === null && place >= last, move, goToNote, goToPin };
}
