import { useState } from 'react';
import { formatDate } from '../../piano/format.ts';
import type { SurveyId, TakeId, TrialId } from '../../piano/ids.ts';
import type { TrialKind } from '../../piano/stringingRecords.ts';
import { newId } from '../../records/newId.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { Button } from '../../ui/Button.tsx';
import { ChoiceField } from '../../ui/ChoiceField.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { texts } from '../../ui/texts.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import { timeOf } from './HeardSection.tsx';
import { TRIAL_KINDS } from './NextSide.tsx';
import type { StringPlace } from './stringKey.ts';
import type { StringTake } from './stringReadings.ts';

const words = texts.strings.trials.choose;

type Side = 'none' | 'before' | 'after';
const SIDES: readonly Side[] = ['none', 'before', 'after'];

type Props = {
  readonly records: Records;
  readonly place: StringPlace;
  /** Of this string. */
  readonly takes: readonly StringTake[];
};

/** A trial from recordings that were made already, in one survey. */
export function TrialFromTakes({ records, place, takes }: Props) {
  const surveys = surveysWithTwo(takes);
  const [surveyId, setSurveyId] = useState<SurveyId | null>(null);
  const [kind, setKind] = useState<TrialKind>('hold the bridge pin');
  const [sides, setSides] = useState<ReadonlyMap<TakeId, Side>>(new Map());
  const [isStored, setStored] = useState(false);
  const [fault, setFault] = useState<WriteFailure | null>(null);
  const chosen = surveys.find(({ survey }) => survey.id === surveyId) ?? surveys[0];
  if (!chosen) return <p>{words.none}</p>;
  const own = takes.filter(({ survey }) => survey.id === chosen.survey.id);
  const of = (side: Side) =>
    own.filter(({ take }) => (sides.get(take.id) ?? 'none') === side).map(({ take }) => take.id);
  const [takesBefore, takesAfter] = [of('before'), of('after')];
  const isWhole = takesBefore.length > 0 && takesAfter.length > 0;
  const store = async () => {
    const triedAt =
      own.findLast(({ take }) => takesAfter.includes(take.id))?.take.recordedAt ?? chosen.survey.startedAt;
    const { instrumentId, visitId, id } = chosen.survey;
    const owner = { instrumentId, visitId, surveyId: id, ...place };
    const trial = { id: newId<TrialId>(), ...owner, kind, triedAt, takesBefore, takesAfter, remark: '' };
    const outcome = await records.saveTrial(trial);
    setFault(outcome.written ? null : outcome);
    setStored(outcome.written);
    if (outcome.written) setSides(new Map());
  };
  return (
    <>
      <SelectField
        id="trial-survey"
        label={words.survey}
        value={chosen.survey.id as string}
        choices={surveys.map(({ survey, visit }) => ({
          value: survey.id as string,
          label: `${formatDate(visit.visitedOn)}, ${texts.common.stage[survey.stage]}`,
        }))}
        onChange={(value) => setSurveyId(value as SurveyId)}
      />
      {own.map(({ take }) => (
        <ChoiceField
          key={take.id}
          name={`side-${take.id}`}
          label={words.take(timeOf(take.recordedAt))}
          value={sides.get(take.id) ?? 'none'}
          choices={SIDES.map((value) => ({ value, label: words.sides[value] }))}
          onChange={(side) => {
            setStored(false);
            setSides(new Map(sides).set(take.id, side));
          }}
        />
      ))}
      <SelectField
        id="trial-kind-chosen"
        label={words.kind}
        value={kind}
        choices={TRIAL_KINDS.map((value) => ({ value, label: texts.strings.trials.kinds[value] }))}
        onChange={setKind}
      />
      <Button isDisabled={!isWhole} onPress={() => void store()}>
        {words.save}
      </Button>
      <p role="status">{isStored ? words.stored : !isWhole && words.needs}</p>
      <WriteFault fault={fault} />
    </>
  );
}

/** The newest first. */
function surveysWithTwo(takes: readonly StringTake[]): StringTake[] {
  const counts = new Map<SurveyId, number>();
  for (const { survey } of takes) counts.set(survey.id, (counts.get(survey.id) ?? 0) + 1);
  const firsts = takes.filter(
    ({ survey }, index) =>
      (counts.get(survey.id) ?? 0) > 1 && takes.findIndex((other) => other.survey.id === survey.id) === index,
  );
  return firsts.reverse();
}
