import { Dialog } from '../../ui/Dialog.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './DeskSettingsDialog.module.css';
import type { DeskSettings } from './deskSettings.ts';
import { FOOT_ACTIONS, FOOT_KEYS } from './recordingKeys.ts';

const words = texts.recording.desk;
const ACTION_CHOICES = FOOT_ACTIONS.map((value) => ({ value, label: words.actions[value] }));

type Props = {
  readonly settings: DeskSettings;
  readonly onChange: (settings: DeskSettings) => void;
  readonly onClose: () => void;
};

/** A click for the ear and a switch for the foot, while both hands are at the piano. */
export function DeskSettingsDialog({ settings, onChange, onClose }: Props) {
  return (
    <Dialog title={words.title} onClose={onClose}>
      <label className={styles.click}>
        <input
          type="checkbox"
          checked={settings.hasClick}
          onChange={(event) => onChange({ ...settings, hasClick: event.target.checked })}
        />
        <span>{words.click}</span>
      </label>
      <p className={styles.hint}>{words.clickHint}</p>
      <h3 className={styles.heading}>{words.foot}</h3>
      <p className={styles.hint}>{words.footHint}</p>
      <div className={styles.keys}>
        {FOOT_KEYS.map((key) => (
          <SelectField
            key={key}
            id={`foot-${key.trim() || 'Space'}`}
            label={words.keys[key]}
            value={settings.footKeys[key]}
            choices={ACTION_CHOICES}
            onChange={(action) => onChange({ ...settings, footKeys: { ...settings.footKeys, [key]: action } })}
          />
        ))}
      </div>
    </Dialog>
  );
}
