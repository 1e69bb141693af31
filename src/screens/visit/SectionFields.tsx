import { notesOf } from '../../piano/compass.ts';
import { formatNote, formatNoteRange } from '../../piano/format.ts';
import type { Instrument } from '../../piano/instrument.ts';
import { type RowSection, sectionsOf } from '../../piano/surveyScope.ts';
import { SelectField } from '../../ui/Field.tsx';
import { FieldRow } from '../../ui/FormPage.tsx';
import { texts } from '../../ui/texts.ts';

const words = texts.visit.scope;
const OTHER = 'other';

type Props = RowSection & { readonly instrument: Instrument; readonly onChange: (ends: RowSection) => void };

/** One stretch of neighbours: from strut to strut where the struts are known, or from any note to any other. */
export function SectionFields({ instrument, fromMidi, toMidi, onChange }: Props) {
  const sections = sectionsOf(instrument);
  const notes = notesOf(instrument.compass).map((midi) => ({ value: String(midi), label: formatNote(midi) }));
  const chosen = sections.findIndex((section) => section.fromMidi === fromMidi && section.toMidi === toMidi);
  const choices = sections.map((section, index) => ({
    value: String(index),
    label: formatNoteRange(section.fromMidi, section.toMidi),
  }));
  return (
    <FieldRow>
      {sections.length > 1 && (
        <SelectField
          id="section"
          label={words.sectionWhole}
          value={chosen < 0 ? OTHER : String(chosen)}
          choices={chosen < 0 ? [...choices, { value: OTHER, label: words.sectionOther }] : choices}
          onChange={(value) => {
            const section = sections[Number(value)];
            if (section) onChange(section);
          }}
        />
      )}
      <SelectField
        id="section-from"
        label={words.from}
        value={String(fromMidi)}
        choices={notes}
        onChange={(value) => onChange({ fromMidi: Number(value), toMidi })}
      />
      <SelectField
        id="section-to"
        label={words.to}
        value={String(toMidi)}
        choices={notes}
        onChange={(value) => onChange({ fromMidi, toMidi: Number(value) })}
      />
    </FieldRow>
  );
}
