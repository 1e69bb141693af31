import { useId, useState } from 'react';
import { formatNote } from '../../piano/format.ts';
import type { ScheduleRow } from '../../piano/stringingRecords.ts';
import { setCells } from '../../stringing/schedule/editSchedule.ts';
import type { PasteAnchor, PastedCells } from '../../stringing/schedule/pastedCells.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Notice } from '../../ui/Notice.tsx';
import { texts } from '../../ui/texts.ts';
import type { GaugeTyping } from './gaugeTyping.ts';
import { cellCount, isWhole, readPaste } from './schedulePaste.ts';
import { pasteComplaintLine } from './sheetWords.ts';
import styles from './stringing.module.css';

const sheetWords = texts.stringing.sheet;
const words = sheetWords.paste;
const MOST_COMPLAINTS = 12;

type Props = {
  readonly rows: readonly ScheduleRow[];
  readonly anchor: PasteAnchor;
  readonly typing: GaugeTyping;
  readonly firstText: string;
  readonly onTake: (rows: readonly ScheduleRow[], message: string) => void;
  readonly onClose: () => void;
};

/** Shows what of a pasted list can be read before any of it is put in. */
export function PasteDialog({ rows, anchor, typing, firstText, onTake, onClose }: Props) {
  const [text, setText] = useState(firstText);
  const fieldId = useId();
  const pasted = readPaste(rows, text, anchor, typing);
  const take = () => onTake(setCells(rows, pasted.edits), sheetWords.pasted(pasted.edits.length, cellCount(pasted)));
  return (
    <Dialog title={words.title} onClose={onClose}>
      <p className={styles.text}>{words.intro}</p>
      <p className={styles.quiet}>{words.start(formatNote(anchor.midi), sheetWords.columns[anchor.field])}</p>
      <div className={styles.full}>
        <label htmlFor={fieldId}>{words.field}</label>
        <textarea
          id={fieldId}
          className={styles.paste}
          value={text}
          spellCheck={false}
          wrap="off"
          onChange={(event) => setText(event.target.value)}
        />
      </div>
      {text.trim() !== '' && <Preview pasted={pasted} />}
      <Button look="primary" isDisabled={pasted.edits.length === 0} onPress={take}>
        {isWhole(pasted) || pasted.edits.length === 0 ? words.takeAll : words.takeRest}
      </Button>
    </Dialog>
  );
}

function Preview({ pasted }: { readonly pasted: PastedCells }) {
  const { edits, complaints, hasHeader, unknownColumns } = pasted;
  return (
    <div role="status" className={styles.list}>
      <p>
        {edits.length === 0 ? words.nothing : words.summary(cellCount(pasted), edits.length)}{' '}
        {hasHeader ? words.header : words.noHeader}
      </p>
      {unknownColumns.length > 0 && <p>{words.unknownColumns(unknownColumns.join(', '))}</p>}
      {complaints.length > 0 && (
        <Notice kind="caution" word={texts.common.cautionWord}>
          {words.complaints(complaints.length)}
          <ul>
            {complaints.slice(0, MOST_COMPLAINTS).map((complaint) => (
              <li key={`${complaint.line} ${complaint.cell}`}>{pasteComplaintLine(complaint)}</li>
            ))}
          </ul>
          {complaints.length > MOST_COMPLAINTS && words.moreComplaints(complaints.length - MOST_COMPLAINTS)}
        </Notice>
      )}
    </div>
  );
}
