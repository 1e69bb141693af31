import type { Instrument } from '../../piano/instrument.ts';
import { ChoiceField } from '../../ui/ChoiceField.tsx';
import { texts } from '../../ui/texts.ts';
import { ChosenNotes } from './ChosenNotes.tsx';
import { SampleFields } from './SampleFields.tsx';
import { SectionFields } from './SectionFields.tsx';
import { type ScopeKind, type SurveyDraft, withNoteToggled, withScopeKind } from './surveyDraft.ts';

const words = texts.visit.scope;
const KINDS: readonly ScopeKind[] = ['all', 'sample', 'section', 'chosen'];
const KIND_CHOICES = KINDS.map((value) => ({ value, label: words.kinds[value] }));

type Props = {
  readonly instrument: Instrument;
  readonly draft: SurveyDraft;
  readonly onChange: (draft: SurveyDraft) => void;
};

/** Which notes to record: all, a sample that the tool proposes, one section, or notes chosen one by one. */
export function ScopeFields({ instrument, draft, onChange }: Props) {
  return (
    <>
      <ChoiceField
        name="scope"
        label={words.label}
        value={draft.scopeKind}
        choices={KIND_CHOICES}
        onChange={(kind) => onChange(withScopeKind(draft, kind))}
      />
      {draft.scopeKind === 'sample' && (
        <SampleFields
          instrument={instrument}
          count={draft.sampleCount}
          onChange={(sampleCount) => onChange({ ...draft, sampleCount })}
        />
      )}
      {draft.scopeKind === 'section' && (
        <SectionFields
          instrument={instrument}
          fromMidi={draft.fromMidi}
          toMidi={draft.toMidi}
          onChange={(ends) => onChange({ ...draft, ...ends })}
        />
      )}
      {draft.scopeKind === 'chosen' && (
        <ChosenNotes
          compass={instrument.compass}
          chosenMidi={draft.chosenMidi}
          onToggle={(midi) => onChange(withNoteToggled(draft, midi))}
          onClear={() => onChange({ ...draft, chosenMidi: [] })}
        />
      )}
    </>
  );
}
