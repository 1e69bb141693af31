import { type ReactNode, useState } from 'react';
import { LENGTH_UNITS, TEMPERATURE_UNITS, TORQUE_UNITS } from '../piano/formatUnits.ts';
import { Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { type Choice, SelectField } from '../ui/Field.tsx';
import { texts } from '../ui/texts.ts';
import { type DeviceChoices, deviceChoices, keepDeviceChoices } from './deviceChoices.ts';
import styles from './SettingsDialog.module.css';

const words = texts.common.settings;

function choicesOf<Value extends string>(values: readonly Value[], names: Record<Value, string>): Choice<Value>[] {
  return values.map((value) => ({ value, label: names[value] }));
}

const CHOICES = {
  language: choicesOf(['device', 'en', 'de'], words.languages),
  length: choicesOf(LENGTH_UNITS, words.lengths),
  temperature: choicesOf(TEMPERATURE_UNITS, words.temperatures),
  torque: choicesOf(TORQUE_UNITS, words.torques),
};

type Props = {
  /** Something is under way on the screen that loading the page anew would break off. */
  readonly isBusy: boolean;
  readonly onClose: () => void;
  /** What needs no loading anew: the brightness. */
  readonly children: ReactNode;
};

/** What holds for this device alone. Screens take words and units as they are loaded, so another choice loads the page anew. */
export function SettingsDialog({ isBusy, onClose, children }: Props) {
  return (
    <Dialog title={words.title} onClose={onClose}>
      {children}
      {isBusy ? <p className={styles.note}>{words.busy}</p> : <LanguageAndUnits />}
    </Dialog>
  );
}

function LanguageAndUnits() {
  const [draft, setDraft] = useState<DeviceChoices>(deviceChoices);
  const field = <Key extends keyof DeviceChoices>(key: Key, choices: readonly Choice<DeviceChoices[Key]>[]) => (
    <SelectField
      id={`settings-${key}`}
      label={words[key]}
      value={draft[key]}
      choices={choices}
      onChange={(value) => setDraft({ ...draft, [key]: value })}
    />
  );
  const use = () => {
    keepDeviceChoices(draft);
    window.location.reload();
  };
  return (
    <>
      <div className={styles.fields}>
        {field('language', CHOICES.language)}
        {field('length', CHOICES.length)}
        {field('temperature', CHOICES.temperature)}
        {field('torque', CHOICES.torque)}
      </div>
      <p className={styles.note}>{words.note}</p>
      <Button look="primary" isLarge onPress={use}>
        {words.use}
      </Button>
    </>
  );
}
