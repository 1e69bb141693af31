import type { WireGrade } from '../../piano/wireGrade.ts';
import { SelectField, TextField } from '../../ui/Field.tsx';
import { FieldRow } from '../../ui/FormPage.tsx';
import { texts } from '../../ui/texts.ts';
import type { ChangeKind } from './tryChange.ts';
import type { TryOutDraft, TryOutFault } from './tryOutDraft.ts';

const words = texts.stringing.tryOut;
const KINDS: readonly ChangeKind[] = ['size', 'diameter', 'length', 'grade', 'pitch'];

type Props = {
  readonly draft: TryOutDraft;
  readonly fault: TryOutFault | null;
  readonly grades: readonly WireGrade[];
  readonly onChange: (change: Partial<TryOutDraft>) => void;
};

export function TryOutFields({ draft, fault, grades, onChange }: Props) {
  const { kind } = draft;
  const errorOf = (field: TryOutFault['field']) => (fault?.field === field ? fault.words : undefined);
  return (
    <FieldRow>
      {kind !== 'pitch' && (
        <>
          <TextField
            id="try-from"
            label={words.from}
            value={draft.from}
            isShort
            error={errorOf('from')}
            onChange={(from) => onChange({ from })}
          />
          <TextField
            id="try-to"
            label={words.to}
            value={draft.to}
            isShort
            error={errorOf('to')}
            onChange={(to) => onChange({ to })}
          />
        </>
      )}
      <SelectField
        id="try-kind"
        label={words.what}
        value={kind}
        choices={KINDS.map((value) => ({ value, label: words.whats[value] }))}
        onChange={(value) => onChange({ kind: value, amount: '' })}
      />
      {kind === 'grade' ? (
        <SelectField
          id="try-amount"
          label={words.whats.grade}
          value={draft.amount}
          choices={[{ value: '', label: '–' }, ...grades.map(({ name }) => ({ value: name, label: name }))]}
          onChange={(amount) => onChange({ amount })}
        />
      ) : (
        <TextField
          id="try-amount"
          label={words.amount}
          value={draft.amount}
          unit={words.units[kind]}
          hint={words.hints[kind]}
          isShort
          isNumber={kind === 'diameter' || kind === 'pitch'} // a tablet's number pad has no minus sign
          error={errorOf('amount')}
          onChange={(amount) => onChange({ amount })}
        />
      )}
    </FieldRow>
  );
}
