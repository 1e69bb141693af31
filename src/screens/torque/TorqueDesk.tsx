import { type KeyboardEvent, useEffect, useRef } from 'react';
import { notesOf } from '../../piano/compass.ts';
import { formatTorque, formatTorqueInBoth } from '../../piano/formatTorque.ts';
import type { Instrument } from '../../piano/instrument.ts';
import type { TorqueReading } from '../../piano/stringingRecords.ts';
import { Button } from '../../ui/Button.tsx';
import { Disclosure } from '../../ui/Disclosure.tsx';
import { TextField } from '../../ui/Field.tsx';
import { KeyHints } from '../../ui/KeyHints.tsx';
import { NoteCells } from '../../ui/NoteCells.tsx';
import { texts } from '../../ui/texts.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import { DeskSettingsFields } from './DeskSettingsFields.tsx';
import { faultWords, newsWords, pinName } from './deskWords.ts';
import { isSamePin } from './pinRound.ts';
import styles from './torque.module.css';
import { readTyped } from './typedTorque.ts';
import type { TorqueDesk as Desk } from './useTorqueDesk.ts';

const words = texts.torque.desk;
const VALUE_FIELD = 'torque-value';

type Props = {
  readonly instrument: Instrument;
  readonly readings: readonly TorqueReading[];
  readonly desk: Desk;
};

/** One pin after the other by the keyboard: a figure and Enter. */
export function TorqueDesk({ instrument, readings, desk }: Props) {
  const { pin, pins, move } = desk;
  const moveByKey = (event: KeyboardEvent) => {
    if (!(event.target instanceof HTMLInputElement)) return;
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : null;
    const isUndo = event.key === 'z' && (event.ctrlKey || event.metaKey) && event.target.value === '';
    if (step === null && !isUndo) return;
    event.preventDefault();
    if (step) move(step);
    else void desk.undo?.();
  };
  const readCount = pins.filter((one) => readings.some((reading) => isSamePin(reading, one))).length;
  return (
    <>
      {pin && (
        <form
          className={styles.desk}
          noValidate
          onKeyDown={moveByKey}
          onSubmit={(event) => {
            event.preventDefault();
            void desk.enter();
            document.getElementById(VALUE_FIELD)?.focus();
          }}
        >
          <p className={styles.quiet}>{words.progress(readCount, pins.length)}</p>
          <p className={styles.said} role="status">
            {desk.said && desk.said.kind !== 'fault' && newsWords(desk.said)}
          </p>
          <p className={styles.pin} aria-live="polite">
            {pinName(pin)}
          </p>
          <EntryFields instrument={instrument} desk={desk} />
          <WriteFault fault={desk.writeFault} />
          <KeyHints>
            <p className={styles.quiet}>{words.keys}</p>
          </KeyHints>
        </form>
      )}
      <DeskSettingsFields instrument={instrument} settings={desk.settings} onSet={desk.set} />
      <NotePicker instrument={instrument} readings={readings} desk={desk} />
    </>
  );
}

function EntryFields({ instrument, desk }: Pick<Props, 'instrument' | 'desk'>) {
  const { typed, standing, settings } = desk;
  const read = readTyped(typed.value, settings.unit, instrument.compass);
  const other = settings.unit === 'N·m' ? 'in·lb' : 'N·m';
  const hint =
    read.kind === 'torque'
      ? words.same(formatTorque(read.torqueNm, other))
      : standing && words.standing(formatTorqueInBoth(standing.torqueNm), texts.torque.read[standing.direction]);
  const fields = useRef<HTMLDivElement>(null);
  // The desk is for typing at: it has the focus when it opens.
  useEffect(() => fields.current?.querySelector('input')?.focus({ preventScroll: true }), []);
  return (
    <>
      <div className={styles.entry} ref={fields}>
        <TextField
          id={VALUE_FIELD}
          label={words.value}
          value={typed.value}
          onChange={(value) => desk.type({ value })}
          unit={settings.unit}
          hint={hint ?? '\u00a0'}
          error={desk.said?.kind === 'fault' ? faultWords(desk.said) : undefined}
          isNumber
        />
        <TextField
          id="torque-remark"
          label={words.remark}
          value={typed.remark}
          onChange={(remark) => desk.type({ remark })}
        />
      </div>
      <div className={styles.buttons}>
        <Button look="primary" isSubmit>
          {words.store}
        </Button>
        <Button onPress={() => desk.move(-1)}>{words.back}</Button>
        <Button onPress={() => desk.move(1)}>{words.pass}</Button>
        <Button isDisabled={!desk.undo} onPress={() => void desk.undo?.()}>
          {words.undo}
        </Button>
      </div>
    </>
  );
}

/** For those who have no letters on their keyboard. */
function NotePicker({ instrument, readings, desk }: Props) {
  const cells = notesOf(instrument.compass).map((midi) => ({
    midi,
    state: readings.some((reading) => reading.midi === midi) ? ('kept' as const) : ('missing' as const),
  }));
  return (
    <Disclosure summary={words.pick}>
      <NoteCells
        label={words.pickLabel}
        cells={cells}
        stateWords={words.cellWords}
        nextMidi={desk.pin?.midi ?? null}
        nextWord={words.here}
        onPick={(midi) => {
          desk.goToNote(midi);
          document.getElementById(VALUE_FIELD)?.focus();
        }}
      />
    </Disclosure>
  );
}
