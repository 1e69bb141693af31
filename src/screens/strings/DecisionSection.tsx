import { useState } from 'react';
import { formatDate } from '../../piano/format.ts';
import type { DecisionId, InstrumentId } from '../../piano/ids.ts';
import type { DecisionChoice, StringDecision } from '../../piano/stringingRecords.ts';
import { newId } from '../../records/newId.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import type { Suggestion } from '../../stringing/decisions/suggestDecision.ts';
import { Button } from '../../ui/Button.tsx';
import { ChoiceField } from '../../ui/ChoiceField.tsx';
import { TextField } from '../../ui/Field.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { todayIso } from '../../ui/today.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import { decisionStep } from './decisionSteps.ts';
import { CHOICES } from './deskKeys.ts';
import { reasonText } from './deskRows.ts';
import type { StringPlace } from './stringKey.ts';

const words = texts.strings.decision;

type Props = {
  readonly records: Records;
  readonly instrumentId: InstrumentId;
  readonly place: StringPlace;
  readonly suggestion: Suggestion;
  readonly decision: StringDecision | null;
};

/** The decision for one string, with a reason in one's own words. */
export function DecisionSection({ records, instrumentId, place, suggestion, decision }: Props) {
  const [choice, setChoice] = useState<DecisionChoice>(decision?.choice ?? suggestion.choice);
  const [reason, setReason] = useState(decision?.reason ?? reasonText(suggestion));
  const [isStored, setStored] = useState(false);
  const [fault, setFault] = useState<WriteFailure | null>(null);
  const choose = (next: DecisionChoice) => {
    setChoice(next);
    setStored(false);
    // A reason of one's own stays; one that was suggested goes with what it was suggested for.
    if (reason === '' || reason === reasonText(suggestion))
      setReason(next === suggestion.choice ? reasonText(suggestion) : '');
  };
  const store = async () => {
    const deciding = { instrumentId, today: todayIso(), newId: () => newId<DecisionId>() };
    const { written } = decisionStep({ place, decision, suggestion }, choice, deciding);
    const outcome = await records.saveDecisions(written.map((row) => ({ ...row, reason: reason.trim() })));
    setFault(outcome.written ? null : outcome);
    setStored(outcome.written);
  };
  return (
    <Section title={words.title} note={words.note}>
      <p>{words.suggested(texts.strings.choices[suggestion.choice], reasonText(suggestion))}</p>
      {decision && (
        <p>
          {words.standing(texts.strings.choices[decision.choice], formatDate(decision.decidedOn))}{' '}
          {decision.doneOn ? words.doneOn(formatDate(decision.doneOn)) : words.notDone}
        </p>
      )}
      <ChoiceField
        name="string-decision"
        label={words.choice}
        value={choice}
        choices={CHOICES.map((value) => ({ value, label: texts.strings.choices[value] }))}
        onChange={choose}
      />
      <TextField
        id="decision-reason"
        label={words.reason}
        hint={words.reasonHint}
        value={reason}
        isLong
        onChange={(value) => {
          setReason(value);
          setStored(false);
        }}
      />
      <Button look="primary" onPress={() => void store()}>
        {words.save}
      </Button>
      <p role="status">{isStored && words.stored}</p>
      <WriteFault fault={fault} />
    </Section>
  );
}
