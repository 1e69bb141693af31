/** Where the row of strings breaks: lines between two notes, for charts along the compass. */
import type { Instrument } from '../piano/instrument.ts';
import type { NoteMark } from './NotesChart.tsx';
import { texts } from './texts.ts';

export function breakMarks(instrument: Pick<Instrument, 'strutsAfterMidi' | 'bassBridgeTopMidi'>): NoteMark[] {
  const struts = instrument.strutsAfterMidi.map((midi) => ({ x: midi + 0.5, label: texts.instrument.change.strut }));
  const bass = instrument.bassBridgeTopMidi;
  if (bass === null) return struts;
  const isAtStrut = instrument.strutsAfterMidi.includes(bass);
  const others = struts.filter((mark) => mark.x !== bass + 0.5);
  const label = isAtStrut ? texts.instrument.change.bassBreakAndStrut : texts.instrument.change.bassBreak;
  return [{ x: bass + 0.5, label }, ...others];
}
