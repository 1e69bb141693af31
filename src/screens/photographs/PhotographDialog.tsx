import { useState } from 'react';
import { formatDate } from '../../piano/format.ts';
import type { Photograph } from '../../piano/photograph.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { Button } from '../../ui/Button.tsx';
import { DeleteButton } from '../../ui/DeleteButton.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { SelectField, TextField } from '../../ui/Field.tsx';
import { texts } from '../../ui/texts.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import { PhotographImage } from './PhotographImage.tsx';
import { type PhotographDraft, photographToDraft, readPhotographDraft } from './photographDraft.ts';
import styles from './photographs.module.css';
import { photographTitle } from './photographWords.ts';
import type { PhotographPage } from './usePhotographs.ts';

const words = texts.photographs.dialog;

type Props = {
  readonly records: Records;
  readonly page: PhotographPage;
  readonly photograph: Photograph;
  readonly onClose: () => void;
};

export function PhotographDialog({ records, page, photograph, onClose }: Props) {
  const { draft, set, noteFault, writeFault, save } = useDraft(records, page, photograph, onClose);
  const title = photographTitle(photograph);
  return (
    <Dialog title={title} onClose={onClose}>
      <PhotographImage
        records={records}
        id={photograph.id}
        mediaType={photograph.mediaType}
        alt={title}
        className={styles.picture}
      />
      <div className={styles.form}>
        <TextField
          id="photograph-caption"
          label={words.caption}
          value={draft.caption}
          onChange={(caption) => set({ caption })}
        />
        <BelongsFields page={page} draft={draft} set={set} noteFault={noteFault} />
        <WriteFault fault={writeFault} />
        <div className={styles.actions}>
          <Button look="primary" onPress={() => void save()}>
            {texts.common.save}
          </Button>
          <DeleteButton
            records={records}
            target={{ table: 'photographs' as const, id: photograph.id }}
            message={words.deleted(title)}
            onDeleted={onClose}
          >
            {words.delete}
          </DeleteButton>
        </div>
      </div>
    </Dialog>
  );
}

type FieldsProps = {
  readonly page: PhotographPage;
  readonly draft: PhotographDraft;
  readonly set: (change: Partial<PhotographDraft>) => void;
  readonly noteFault: string | undefined;
};

function BelongsFields({ page, draft, set, noteFault }: FieldsProps) {
  const visits = page.visits.map(({ id, visitedOn }) => ({ value: String(id), label: formatDate(visitedOn) }));
  const positions = texts.common.stringPosition.map((label, index) => ({ value: String(index), label }));
  return (
    <>
      <SelectField
        id="photograph-visit"
        label={words.belongs}
        value={draft.visitId}
        choices={[
          { value: '', label: words.instrument },
          ...visits.map(({ value, label }) => ({ value, label: texts.visit.title(label) })),
        ]}
        onChange={(visitId) => set({ visitId })}
      />
      <TextField
        id="photograph-note"
        label={words.note}
        value={draft.note}
        hint={words.noteHint}
        error={noteFault}
        isShort
        onChange={(note) => set({ note })}
      />
      {draft.note.trim() !== '' && (
        <SelectField
          id="photograph-string"
          label={words.string}
          value={draft.string === '' ? '0' : draft.string}
          choices={positions}
          onChange={(string) => set({ string: string as PhotographDraft['string'] })}
        />
      )}
    </>
  );
}

function useDraft(records: Records, page: PhotographPage, photograph: Photograph, onSaved: () => void) {
  const [draft, setDraft] = useState(() => photographToDraft(photograph));
  const [noteFault, setNoteFault] = useState<string | undefined>(undefined);
  const [writeFault, setWriteFault] = useState<WriteFailure | null>(null);
  const set = (change: Partial<PhotographDraft>) => setDraft((before) => ({ ...before, ...change }));
  const save = async () => {
    const read = readPhotographDraft(photograph, draft, page.instrument.compass);
    setNoteFault(read.isSound ? undefined : words.noteFault);
    if (!read.isSound) return;
    const outcome = await records.savePhotograph(read.photograph);
    if (outcome.written) onSaved();
    else setWriteFault(outcome);
  };
  return { draft, set, noteFault, writeFault, save };
}
