import { useState } from 'react';
import { SCHEDULE_FIELDS } from '../../piano/wireScheduleCell.ts';
import { setCells } from '../../stringing/schedule/editSchedule.ts';
import type { SheetActions } from '../../ui/sheet/sheetModel.ts';
import type { CellRange } from '../../ui/sheet/sheetState.ts';
import { texts } from '../../ui/texts.ts';
import type { GaugeTyping } from './gaugeTyping.ts';
import { clearedRange, filledRange } from './rangeFields.ts';
import { anchorOf, cellCount, isWhole, readPaste, spreadPaste } from './schedulePaste.ts';
import { typedCell } from './scheduleSheet.ts';
import type { ScheduleEditor } from './useSchedule.ts';

type Pasting = { readonly text: string; readonly range: CellRange };

/** What the sheet asks for, done to the schedule. A paste that cannot be taken whole is shown first. */
export function useSheetActions(editor: ScheduleEditor, typing: GaugeTyping) {
  const [said, say] = useState('');
  const [pasting, setPasting] = useState<Pasting | null>(null);
  const { rows } = editor.schedule;
  const actions: SheetActions = {
    store: (at, text) => {
      const midi = rows[at.row]?.midi;
      const field = SCHEDULE_FIELDS[at.column];
      if (midi === undefined || field === undefined) return null;
      const typed = typedCell(midi, field, text, typing);
      if (!typed.isTaken) return typed.refusal;
      editor.setRows(setCells(rows, [typed.edit]));
      return null;
    },
    clear: (range) => editor.setRows(clearedRange(rows, range)),
    fillDown: (range) => editor.setRows(filledRange(rows, range)),
    paste: (text, range) => {
      const spread = spreadPaste(rows, text, range, typing);
      const pasted = readPaste(rows, text, anchorOf(rows, range), typing);
      if (spread) editor.setRows(spread);
      else if (isWhole(pasted)) {
        editor.setRows(setCells(rows, pasted.edits));
        say(texts.stringing.sheet.pasted(pasted.edits.length, cellCount(pasted)));
      } else setPasting({ text, range });
    },
    undo: editor.undo,
    redo: editor.redo,
  };
  return { actions, said, say, pasting, setPasting };
}
