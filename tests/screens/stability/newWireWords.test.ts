import { expect, it } from 'vitest';
import { newWireSentences } from '../../../src/screens/stability/newWireWords.ts';
import { texts } from '../../../src/ui/texts.ts';

const words = texts.stability.newWire;
const since = '2024-03-01';
const told = (wire: Parameters<typeof newWireSentences>[0]) =>
  newWireSentences(wire).join(' ').replaceAll('\u00a0', ' ');

it('says what new wire does, how far it fell and what is to come', () => {
  const text = told({ kind: 'settling', since, firstYearCents: -27.3, centsPerYear: -3 });
  expect(text).toContain('Restrung on 1 March 2024.');
  expect(text).toContain('it fell by about 27 cents');
  expect(text).toContain('still falling, by about 3.0 cents a year');
});

it('says rising where it rose, and of no first year that did not fall', () => {
  expect(told({ kind: 'first year', since, movedCents: 4 })).toContain('rose by 4.0 cents');
  expect(told({ kind: 'first year', since, movedCents: -4 })).toContain('fell by 4.0 cents');
  expect(told({ kind: 'settled', since, firstYearCents: 1, centsPerYear: 0.3 })).not.toContain('In its first year');
});

it('asks for the surveys that would show it', () => {
  expect(newWireSentences({ kind: 'not seen yet', since })).toContain(words.notSeen);
});
