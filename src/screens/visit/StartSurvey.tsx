import { useState } from 'react';
import type { Survey, SurveyStage } from '../../piano/instrument.ts';
import { Button } from '../../ui/Button.tsx';
import { ChoiceField } from '../../ui/ChoiceField.tsx';
import type { Choice } from '../../ui/Field.tsx';
import { texts } from '../../ui/texts.ts';
import type { SurveyChoice } from './useVisit.ts';
import styles from './visit.module.css';

const words = texts.visit.start;
const STAGES: readonly Choice<SurveyStage>[] = [
  { value: 'as-found', label: words.asFound },
  { value: 'as-left', label: words.asLeft },
];
const STRINGS: readonly Choice<Survey['strings']>[] = [
  { value: 'centre strings', label: texts.common.strings['centre strings'] },
  { value: 'open unisons', label: texts.common.strings['open unisons'] },
  { value: 'single strings', label: texts.common.strings['single strings'] },
];

type Props = { readonly suggestedStage: SurveyStage; readonly onStart: (choice: SurveyChoice) => void };

export function StartSurvey({ suggestedStage, onStart }: Props) {
  const [stage, setStage] = useState(suggestedStage);
  const [strings, setStrings] = useState<Survey['strings']>('centre strings');
  return (
    <div className={styles.start}>
      <ChoiceField name="stage" label={words.stage} value={stage} choices={STAGES} onChange={setStage} />
      <ChoiceField name="strings" label={words.strings} value={strings} choices={STRINGS} onChange={setStrings} />
      <Button look="primary" isLarge onPress={() => onStart({ stage, strings })}>
        {words.action[stage]}
      </Button>
      <p className={styles.privacy}>{words.privacy}</p>
    </div>
  );
}
