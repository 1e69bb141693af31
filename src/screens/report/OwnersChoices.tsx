import { formatDate } from '../../piano/format.ts';
import type { Photograph } from '../../piano/photograph.ts';
import { OPTIONAL_SECTIONS } from '../../report/ownersPage.ts';
import { TextField } from '../../ui/Field.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './ownersPage.module.css';
import type { OwnersView } from './useOwnersPage.ts';

const words = texts.report.choice;

type Props = { readonly view: OwnersView; readonly photographs: readonly Photograph[] };

export function OwnersChoices({ view, photographs }: Props) {
  const wantsPhotographs = !view.leftOut.includes('photographs');
  return (
    <Section title={words.title} note={words.note}>
      <fieldset className={styles.choices}>
        <legend className={styles.legend}>{words.title}</legend>
        {OPTIONAL_SECTIONS.map((section) => (
          <CheckBox
            key={section}
            label={words.sections[section]}
            isChecked={!view.leftOut.includes(section)}
            onChange={(isIn) => view.setSection(section, isIn)}
          />
        ))}
      </fieldset>
      {wantsPhotographs && <PhotographChoices view={view} photographs={photographs} />}
      <TextField
        id="owners-remark"
        label={words.remark}
        hint={words.remarkHint}
        value={view.remark}
        isLong
        onChange={view.setRemark}
      />
    </Section>
  );
}

function PhotographChoices({ view, photographs }: Props) {
  if (photographs.length === 0) return <p className={styles.none}>{words.noPhotographs}</p>;
  return (
    <fieldset className={styles.choices}>
      <legend className={styles.legendShown}>{words.photographs}</legend>
      {photographs.map(({ id, caption, takenAt, addedAt }) => (
        <CheckBox
          key={id}
          label={words.photograph(caption, formatDate(takenAt ?? addedAt))}
          isChecked={view.chosenPhotographs.includes(id)}
          onChange={(isIn) => view.setPhotograph(id, isIn)}
        />
      ))}
    </fieldset>
  );
}

type CheckBoxProps = {
  readonly label: string;
  readonly isChecked: boolean;
  readonly onChange: (isChecked: boolean) => void;
};

function CheckBox({ label, isChecked, onChange }: CheckBoxProps) {
  return (
    <label className={styles.choice}>
      <input type="checkbox" checked={isChecked} onChange={(event) => onChange(event.target.checked)} />
      <span>{label}</span>
    </label>
  );
}
