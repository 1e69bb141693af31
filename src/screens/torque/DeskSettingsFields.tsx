import { formatNoteRange } from '../../piano/format.ts';
import type { Instrument } from '../../piano/instrument.ts';
import type { TorqueReading } from '../../piano/stringingRecords.ts';
import { sectionsOf } from '../../piano/surveyScope.ts';
import type { TorqueUnit } from '../../piano/torque.ts';
import { ChoiceField } from '../../ui/ChoiceField.tsx';
import { type Choice, SelectField, TextField } from '../../ui/Field.tsx';
import { texts } from '../../ui/texts.ts';
import { type DeskSettings, type NotesChoice, notesOfRound } from './deskSettings.ts';
import type { PinChoice } from './pinRound.ts';
import styles from './torque.module.css';

const words = texts.torque.desk;
const UNITS: readonly TorqueUnit[] = ['N·m', 'in·lb'];
const PINS: readonly PinChoice[] = ['one', 'all'];
const DIRECTIONS: readonly TorqueReading['direction'][] = ['not noted', 'sharpwards', 'flatwards'];
const UNIT_CHOICES = UNITS.map((value) => ({ value, label: texts.torque.units[value] }));
const PIN_CHOICES = PINS.map((value) => ({ value, label: words.pinChoices[value] }));
const DIRECTION_CHOICES = DIRECTIONS.map((value) => ({ value, label: texts.torque.directions[value] }));

type Props = {
  readonly instrument: Instrument;
  readonly settings: DeskSettings;
  readonly onSet: (change: Partial<DeskSettings>) => void;
};

export function DeskSettingsFields({ instrument, settings, onSet }: Props) {
  const notes = notesOfRound(instrument, settings);
  const error = notes.ok ? undefined : words.namedFaults[notes.fault](notes.part);
  return (
    <>
      <div className={styles.settings}>
        <ChoiceField
          name="torque-unit"
          label={words.unit}
          value={settings.unit}
          choices={UNIT_CHOICES}
          onChange={(unit) => onSet({ unit })}
        />
        <ChoiceField
          name="torque-direction"
          label={words.direction}
          value={settings.direction}
          choices={DIRECTION_CHOICES}
          onChange={(direction) => onSet({ direction })}
        />
        <ChoiceField
          name="torque-pins"
          label={words.pins}
          value={settings.pins}
          choices={PIN_CHOICES}
          onChange={(pins) => onSet({ pins })}
        />
        <SelectField
          id="torque-notes"
          label={words.notes}
          value={settings.notes}
          choices={noteChoices(instrument)}
          onChange={(chosen) => onSet({ notes: chosen })}
        />
        {settings.notes === 'named' && (
          <TextField
            id="torque-named"
            label={words.namedNotes}
            value={settings.named}
            onChange={(named) => onSet({ named })}
            hint={words.namedHint}
            error={error}
          />
        )}
      </div>
      {settings.direction !== 'not noted' && <p className={styles.quiet}>{words.directionHint}</p>}
      {settings.pins === 'all' && <p className={styles.quiet}>{words.stringCountUsual}</p>}
    </>
  );
}

function noteChoices(instrument: Instrument): Choice<NotesChoice>[] {
  const sections = sectionsOf(instrument);
  const ofSections = sections.map(({ fromMidi, toMidi }, index) => ({
    value: `section ${index}` as const,
    label: formatNoteRange(fromMidi, toMidi),
  }));
  return [
    { value: 'all', label: words.allNotes },
    ...(sections.length > 1 ? ofSections : []),
    { value: 'named', label: words.chosenNotes },
  ];
}
