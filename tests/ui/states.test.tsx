import type { ReactElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { DataTable } from '../../src/ui/DataTable.tsx';
import { LevelBar } from '../../src/ui/LevelBar.tsx';
import { NoteCells } from '../../src/ui/NoteCells.tsx';
import type { NoteState } from '../../src/ui/noteState.ts';
import { StateMark } from '../../src/ui/StateMark.tsx';
import { StripLegend } from '../../src/ui/StripLegend.tsx';
import { texts } from '../../src/ui/texts.ts';
import { type BlockState, VerdictMark } from '../../src/ui/VerdictMark.tsx';

const STATES: NoteState[] = ['missing', 'kept', 'doubtful', 'skipped'];

const VERDICTS: BlockState[] = ['holding', 'watch', 'giving way', 'not enough evidence'];

/** The picture with everything about colour and class taken out. */
const shapeOf = (mark: ReactElement) => renderToStaticMarkup(mark).replace(/(class|data-[a-z]+)="[^"]*"/g, '');

describe('a state', () => {
  it('has a shape of its own, without its colour', () => {
    const shapes = STATES.map((state) => shapeOf(<StateMark key={state} state={state} />));
    expect(new Set(shapes).size).toBe(STATES.length);
  });

  it('has a word of its own', () => {
    expect(new Set(Object.values(texts.common.noteStates)).size).toBe(STATES.length);
  });

  it('stands in its cell as a word, and is read out with the note', () => {
    const markup = renderToStaticMarkup(
      <NoteCells
        label="All"
        cells={STATES.map((state, index) => ({ midi: 60 + index, state }))}
        stateWords={texts.common.noteStates}
        nextMidi={60}
        nextWord="next"
        onPick={() => undefined}
      />,
    );
    expect(markup).toContain('aria-label="C4, missing, next"');
    for (const [index, word] of ['kept', 'doubtful', 'skipped'].entries()) {
      expect(markup).toContain(`>${word}</span>`);
      expect(markup).toContain(`aria-label="${['C♯4', 'D4', 'D♯4'][index]}, ${word}"`);
    }
  });

  it('is counted in the legend, which names only what occurs', () => {
    const markup = renderToStaticMarkup(<StripLegend cells={[{ midi: 60, state: 'doubtful' }]} />);
    expect(markup).toContain('0 kept');
    expect(markup).toContain('1 doubtful');
    expect(markup).not.toContain('skipped');
  });
});

it('a verdict has a shape of its own, without its colour', () => {
  const shapes = VERDICTS.map((state) => shapeOf(<VerdictMark key={state} state={state} />));
  expect(new Set(shapes).size).toBe(VERDICTS.length);
});

it('the level is told in a word beside the bar, and to a screen reader', () => {
  const markup = renderToStaticMarkup(<LevelBar label="Level" share={1.3} zone="clipping" word="clipping" />);
  expect(markup).toContain('aria-valuetext="clipping"');
  expect(markup).toContain('>clipping</span>');
  expect(markup).toContain('width:100%');
});

it('a table has a caption, column headers and a header for each row, and can be reached by keyboard', () => {
  const markup = renderToStaticMarkup(
    <DataTable
      caption="Visits"
      columns={[
        { key: 'date', title: 'Date', isRowHeader: true, cell: (row: { date: string }) => row.date },
        { key: 'note', title: 'Note', isNumber: true, cell: () => 'x' },
      ]}
      rows={[{ date: 'today' }]}
      rowKey={(row) => row.date}
    />,
  );
  expect(markup).toMatch(/<caption[^>]*>Visits<\/caption>/);
  expect(markup.match(/scope="col"/g)).toHaveLength(2);
  expect(markup).toMatch(/<th scope="row"[^>]*>today<\/th>/);
  expect(markup).toContain('tabindex="0"');
});
