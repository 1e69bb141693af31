import { expect, it } from 'vitest';
import { textTable } from '../../src/cli/textTable.ts';

it('aligns words left and figures right, and leaves out columns without content', () => {
  const rows = [
    { note: 'A4', cents: '+1.7\u2009¢' },
    { note: 'F♯10', cents: '−12.25\u00a0¢' },
  ];
  const table = textTable(
    [
      { title: 'note', align: 'left', text: ({ note }) => note },
      { title: 'remark', align: 'left', text: () => '' },
      { title: 'cents', align: 'right', text: ({ cents }) => cents },
    ],
    rows,
  );
  expect(table).toBe(['note     cents', 'A4      +1.7 ¢', 'F♯10  −12.25 ¢'].join('\n'));
});
