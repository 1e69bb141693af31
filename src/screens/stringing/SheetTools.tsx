import type { Instrument } from '../../piano/instrument.ts';
import { interpolateEmpty } from '../../stringing/schedule/interpolateEmpty.ts';
import { scheduleBreaks } from '../../stringing/schedule/scheduleRows.ts';
import { Button } from '../../ui/Button.tsx';
import { saveFile } from '../../ui/chartExport/saveFile.ts';
import { speakingName } from '../../ui/chartExport/speakingName.ts';
import type { CellRange } from '../../ui/sheet/sheetState.ts';
import { texts } from '../../ui/texts.ts';
import { CsvPicker } from './CsvPicker.tsx';
import { withRowsOfFile } from './newSchedules.ts';
import { filledRange, interpolatedCount, withoutAllInterpolated } from './rangeFields.ts';
import styles from './stringing.module.css';
import type { ScheduleEditor } from './useSchedule.ts';

const words = texts.stringing.sheet;

type Props = {
  readonly instrument: Instrument;
  readonly editor: ScheduleEditor;
  /** What is chosen in the sheet. */
  readonly range: CellRange;
  readonly onSay: (message: string) => void;
  readonly onPaste: () => void;
};

/** What the keys do, and more, for fingers. */
export function SheetTools({ instrument, editor, range, onSay, onPaste }: Props) {
  const { schedule, setRows } = editor;
  const { rows } = schedule;
  const interpolate = () => {
    const filled = interpolateEmpty(rows, scheduleBreaks(rows, instrument));
    setRows(sameOrNew(rows, filled));
    onSay(words.interpolated2(interpolatedCount(filled)));
  };
  const takeOut = () => {
    onSay(words.takenOut(interpolatedCount(rows)));
    setRows(withoutAllInterpolated(rows));
  };
  const save = async () => {
    const { writeScheduleCsv } = await import('../../files/scheduleCsv.ts');
    const content = new Blob([writeScheduleCsv(rows)], { type: 'text/csv;charset=utf-8' });
    saveFile(content, speakingName([instrument.name, schedule.name], 'csv'));
  };
  return (
    <div className={styles.buttons}>
      <Button isDisabled={!editor.canUndo} onPress={editor.undo}>
        {words.buttons.undo}
      </Button>
      <Button isDisabled={!editor.canRedo} onPress={editor.redo}>
        {words.buttons.redo}
      </Button>
      <Button onPress={() => setRows(filledRange(rows, range))}>{words.buttons.fillDown}</Button>
      <Button onPress={interpolate}>{words.buttons.interpolate}</Button>
      {interpolatedCount(rows) > 0 && <Button onPress={takeOut}>{words.buttons.takeBack}</Button>}
      <Button onPress={onPaste}>{words.buttons.paste}</Button>
      <CsvPicker
        onRows={(ofFile, fileName) => {
          setRows(withRowsOfFile(rows, ofFile));
          onSay(words.broughtIn(ofFile.length, fileName));
        }}
      >
        {words.buttons.bringIn}
      </CsvPicker>
      <Button onPress={() => void save()}>{words.buttons.save}</Button>
    </div>
  );
}

type Rows = ScheduleEditor['schedule']['rows'];

/** Interpolating anew what was interpolated alike is no change. */
function sameOrNew(rows: Rows, filled: Rows): Rows {
  return JSON.stringify(rows) === JSON.stringify(filled) ? rows : filled;
}
