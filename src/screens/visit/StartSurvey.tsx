import { useState } from 'react';
import type { Instrument, Survey, SurveyStage } from '../../piano/instrument.ts';
import { Button } from '../../ui/Button.tsx';
import { ChoiceField } from '../../ui/ChoiceField.tsx';
import type { Choice } from '../../ui/Field.tsx';
import { RecordingsPicker } from '../../ui/RecordingsPicker.tsx';
import { texts } from '../../ui/texts.ts';
import { ScopeFields } from './ScopeFields.tsx';
import { choiceOf, newSurveyDraft, type SurveyChoice } from './surveyDraft.ts';
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

type Props = {
  readonly instrument: Instrument;
  readonly suggestedStage: SurveyStage;
  readonly onStart: (choice: SurveyChoice) => void;
  readonly onRecordings: (choice: SurveyChoice, files: readonly File[]) => void;
};

export function StartSurvey({ instrument, suggestedStage, onStart, onRecordings }: Props) {
  const [draft, setDraft] = useState(() => newSurveyDraft(instrument, suggestedStage));
  const { stage, strings } = draft;
  const choice = choiceOf(draft, instrument);
  return (
    <div className={styles.start}>
      <ChoiceField
        name="stage"
        label={words.stage}
        value={stage}
        choices={STAGES}
        onChange={(next) => setDraft({ ...draft, stage: next })}
      />
      <ScopeFields instrument={instrument} draft={draft} onChange={setDraft} />
      {stage === 'as-left' && draft.scopeKind !== 'all' && (
        <p className={styles.privacy}>{texts.visit.scope.leftAs[draft.scopeKind]}</p>
      )}
      <ChoiceField
        name="strings"
        label={words.strings}
        value={strings}
        choices={STRINGS}
        onChange={(next) => setDraft({ ...draft, strings: next })}
      />
      <Button look="primary" isLarge isDisabled={choice === null} onPress={() => choice && onStart(choice)}>
        {words.action[stage]}
      </Button>
      <p className={styles.privacy}>{words.privacy}</p>
      <RecordingsPicker isDisabled={choice === null} onPick={(files) => choice && onRecordings(choice, files)} />
    </div>
  );
}
