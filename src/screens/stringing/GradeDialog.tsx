import { useState } from 'react';
import type { WireGradeId } from '../../piano/ids.ts';
import type { OwnWireGrade } from '../../piano/stringingRecords.ts';
import { newId } from '../../records/newId.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/Field.tsx';
import { FieldRow, FormActions, FormPage } from '../../ui/FormPage.tsx';
import { texts } from '../../ui/texts.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import { draftOf, type GradeDraft, type GradeFaults, readGrade } from './gradeDraft.ts';

const words = texts.stringing.grades.form;

type Props = {
  readonly records: Records;
  /** Null for a new one. */
  readonly grade: OwnWireGrade | null;
  readonly ownGrades: readonly OwnWireGrade[];
  readonly onClose: () => void;
};

export function GradeDialog({ records, grade, ownGrades, onClose }: Props) {
  const [draft, setDraft] = useState(() => draftOf(grade));
  const [faults, setFaults] = useState<GradeFaults>({});
  const [writeFault, setWriteFault] = useState<WriteFailure | null>(null);
  const save = async () => {
    const others = ownGrades.filter(({ id }) => id !== grade?.id);
    const read = readGrade(draft, grade?.id ?? newId<WireGradeId>(), others);
    setFaults(read.isSound ? {} : read.faults);
    if (!read.isSound) return;
    const outcome = await records.saveWireGrade(read.grade);
    if (outcome.written) onClose();
    else setWriteFault(outcome);
  };
  const set = (change: Partial<GradeDraft>) => {
    setDraft((before) => ({ ...before, ...change }));
    setFaults((before) => Object.fromEntries(Object.entries(before).filter(([field]) => !(field in change))));
  };
  return (
    <Dialog title={grade ? words.titleChange : words.titleNew} onClose={onClose}>
      <FormPage faults={faults} onSubmit={() => void save()}>
        <Fields draft={draft} faults={faults} onChange={set} />
        <WriteFault fault={writeFault} />
        <FormActions>
          <Button look="primary" isSubmit>
            {texts.common.save}
          </Button>
        </FormActions>
      </FormPage>
    </Dialog>
  );
}

type FieldsProps = {
  readonly draft: GradeDraft;
  readonly faults: GradeFaults;
  readonly onChange: (change: Partial<GradeDraft>) => void;
};

function Fields({ draft, faults, onChange }: FieldsProps) {
  return (
    <FieldRow>
      <TextField
        id="grade-name"
        label={words.name}
        value={draft.name}
        hint={words.nameHint}
        error={faults.name}
        onChange={(name) => onChange({ name })}
      />
      <TextField
        id="grade-source"
        label={words.source}
        value={draft.source}
        hint={words.sourceHint}
        error={faults.source}
        onChange={(source) => onChange({ source })}
      />
      <TextField
        id="grade-modulus"
        label={words.modulus}
        value={draft.modulus}
        unit="GPa"
        isNumber
        hint={words.modulusHint}
        error={faults.modulus}
        onChange={(modulus) => onChange({ modulus })}
      />
      <TextField
        id="grade-density"
        label={words.density}
        value={draft.density}
        unit="kg/m³"
        isNumber
        hint={words.densityHint}
        error={faults.density}
        onChange={(density) => onChange({ density })}
      />
      <TextField
        id="grade-rows"
        label={words.rows}
        value={draft.rows}
        isLong
        hint={words.rowsHint}
        error={faults.rows}
        onChange={(rows) => onChange({ rows })}
      />
    </FieldRow>
  );
}
