import { useMemo, useState } from 'react';
import type { Instrument } from '../../piano/instrument.ts';
import type { WireGrade } from '../../piano/wireGrade.ts';
import { SCHEDULE_FIELDS } from '../../piano/wireScheduleCell.ts';
import { checkSchedule } from '../../stringing/schedule/checkSchedule.ts';
import { scheduleBreaks } from '../../stringing/schedule/scheduleRows.ts';
import { Disclosure } from '../../ui/Disclosure.tsx';
import { KeyHints } from '../../ui/KeyHints.tsx';
import { Section } from '../../ui/Section.tsx';
import { Sheet } from '../../ui/sheet/Sheet.tsx';
import { rangeOf } from '../../ui/sheet/sheetState.ts';
import { useSheet } from '../../ui/sheet/useSheet.ts';
import { texts } from '../../ui/texts.ts';
import { ComplaintList } from './ComplaintList.tsx';
import { GaugeTypingField } from './GaugeTypingField.tsx';
import { gaugeTypingSetting } from './gaugeTyping.ts';
import { PasteDialog } from './PasteDialog.tsx';
import { SheetTools } from './SheetTools.tsx';
import { anchorOf } from './schedulePaste.ts';
import { sheetColumns, sheetRows } from './scheduleSheet.ts';
import styles from './stringing.module.css';
import type { ScheduleEditor } from './useSchedule.ts';
import { useSheetActions } from './useSheetActions.ts';
import { WritingState } from './WritingState.tsx';

const words = texts.stringing.sheet;

type Props = {
  readonly instrument: Instrument;
  readonly editor: ScheduleEditor;
  readonly grades: readonly WireGrade[];
};

export function SheetSection({ instrument, editor, grades }: Props) {
  const { rows, name } = editor.schedule;
  const [typing, setTyping] = useState(gaugeTypingSetting.read);
  const complaints = useMemo(() => checkSchedule(rows, scheduleBreaks(rows, instrument)), [rows, instrument]);
  const data = useMemo(
    () => ({
      label: words.label(name),
      rowTitle: words.rowTitle,
      columns: sheetColumns(grades.map((grade) => grade.name)),
      rows: sheetRows(rows, complaints),
    }),
    [rows, complaints, name, grades],
  );
  const { actions, said, say, pasting, setPasting } = useSheetActions(editor, typing);
  const view = useSheet(data, actions);
  const range = rangeOf(view.state);
  const closePaste = () => {
    setPasting(null);
    view.focusCell();
  };
  const takePaste = (taken: typeof rows, message: string) => {
    editor.setRows(taken);
    say(message);
    closePaste();
  };
  return (
    <Section title={words.title} note={words.note}>
      <SheetTools
        instrument={instrument}
        editor={editor}
        range={range}
        onSay={say}
        onPaste={() => setPasting({ text: '', range })}
      />
      <div className={styles.full}>
        <Sheet data={data} actions={actions} view={view} />
        <p className={styles.said} role="status">
          {view.refusal && !view.state.editing ? view.refusal.message : said}
        </p>
      </div>
      <WritingState editor={editor} />
      <p className={styles.quiet}>
        {words.wireNote} {words.interpolateHint}
      </p>
      <KeyHints>
        <Disclosure summary={words.keysTitle}>
          <ul className={styles.list}>
            {words.keys.map((line) => (
              <li key={line}>
                <span aria-hidden="true">–</span>
                {line}
              </li>
            ))}
          </ul>
        </Disclosure>
      </KeyHints>
      <GaugeTypingField
        value={typing}
        onChange={(value) => {
          gaugeTypingSetting.write(value);
          setTyping(value);
        }}
      />
      <ComplaintList
        complaints={complaints}
        onGoTo={({ midi, field }) => {
          const row = rows.findIndex((one) => one.midi === midi);
          view.goTo({ row, column: SCHEDULE_FIELDS.indexOf(field) });
          view.focusCell();
        }}
      />
      {pasting && (
        <PasteDialog
          rows={rows}
          anchor={anchorOf(rows, pasting.range)}
          typing={typing}
          firstText={pasting.text}
          onTake={takePaste}
          onClose={closePaste}
        />
      )}
    </Section>
  );
}
