import { useState } from 'react';
import type { TrialKind } from '../../piano/stringingRecords.ts';
import { Button } from '../../ui/Button.tsx';
import { ChoiceField } from '../../ui/ChoiceField.tsx';
import { TextField } from '../../ui/Field.tsx';
import { FieldRow } from '../../ui/FormPage.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './TrialRecorder.module.css';
import type { TrialRecorder } from './useTrialRecorder.ts';

const words = texts.strings.trials.record;

export const TRIAL_KINDS: readonly TrialKind[] = [
  'hold the bridge pin',
  'press the wire at the bridge',
  'tap the wire to the bridge',
  'seat the wire at the other end',
  'take out its twist',
  'other',
];

/** What is done to the string next, or the end of the trial. */
export function NextSide({ recorder }: { readonly recorder: TrialRecorder }) {
  const [kind, setKind] = useState<TrialKind>('hold the bridge pin');
  const [remark, setRemark] = useState('');
  const hasTake = recorder.sides.at(-1)?.takeIds.length !== 0;
  return (
    <>
      <ChoiceField
        name="trial-kind"
        label={words.next}
        value={kind}
        choices={TRIAL_KINDS.map((value) => ({ value, label: texts.strings.trials.kinds[value] }))}
        onChange={setKind}
      />
      <p className={styles.text}>{texts.strings.trials.how[kind]}</p>
      <TextField id="trial-remark" label={words.remark} value={remark} onChange={setRemark} />
      <FieldRow>
        <Button
          look="primary"
          isDisabled={!hasTake}
          onPress={() => {
            recorder.nextSide(kind, remark.trim());
            setRemark('');
          }}
        >
          {words.doIt}
        </Button>
        <Button onPress={() => void recorder.end()}>{words.end}</Button>
      </FieldRow>
      {!hasTake && <p className={styles.text}>{words.needsTake}</p>}
    </>
  );
}
