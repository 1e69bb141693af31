import { renderToStaticMarkup } from 'react-dom/server';
import { expect, it } from 'vitest';
import { TakeFigures } from '../../src/ui/TakeFigures.tsx';
import { texts } from '../../src/ui/texts.ts';
import { readingAt } from '../screens/plainReading.ts';

/** Of a reading that beats on these partials. */
function markupOf(partialNumbers: readonly number[]): string {
  const plain = readingAt(60, 0);
  const beating = { ...plain.beating, kind: 'false beat' as const, rateHz: 1, partialNumbers };
  return renderToStaticMarkup(<TakeFigures reading={{ ...plain, beating }} />);
}

it('counts the partials that beat', () => {
  expect(markupOf([2])).toMatch(/on partial 2\W/);
  expect(markupOf([2, 3])).toMatch(/on partials 2, 3\W/);
});

it('calls a take usable, or not and why', () => {
  const notUsable = renderToStaticMarkup(<TakeFigures reading={readingAt(60, 0, { faults: ['knock'] })} />);
  expect(markupOf([])).toContain(`${texts.take.usable};`);
  expect(notUsable).toContain(`${texts.take.notUsable}: ${texts.take.faults.knock}`);
});
