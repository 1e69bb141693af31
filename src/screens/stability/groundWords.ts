/** A ground of a verdict, and why a reading was set aside, as sentences. */
import { formatNoteRange } from '../../piano/format.ts';
import { formatCentsSize } from '../../piano/formatPlain.ts';
import { formatSpeed, formatYearCount } from '../../piano/formatStability.ts';
import type { Drift } from '../../stability/drift/analyseDrift.ts';
import type { OutlierReason } from '../../stability/drift/outlierReason.ts';
import type { GroundPin, VerdictGround } from '../../stability/drift/verdictGrounds.ts';
import { texts } from '../../ui/texts.ts';
import { stringNamer } from './stringNames.ts';

const words = texts.stability.verdict.grounds;
const MOST_NAMED = 6;

export function groundWords(ground: VerdictGround, { pins }: Pick<Drift, 'pins'>): string {
  switch (ground.kind) {
    case 'zone-slips':
      return words['zone-slips'](
        formatNoteRange(ground.fromMidi, ground.toMidi),
        formatSpeed(ground.centsPerYear),
        ground.isAccelerating,
      );
    case 'pins-slip':
      return words['pins-slip'](namesOf(ground.pins, pins), ground.pins.length);
    case 'pins-suspected':
      return words['pins-suspected'](namesOf(ground.pins, pins));
    case 'no-string-slips':
      return words['no-string-slips'](formatSpeed(ground.ruledOutCentsPerYear));
    case 'slip-could-hide':
      return words['slip-could-hide'](formatSpeed(ground.ruledOutCentsPerYear));
    case 'few-notes':
      return words['few-notes'](ground.noteCount);
    case 'never-compared':
      return words['never-compared'];
    case 'has-to-repeat':
      return words['has-to-repeat'](ground.visitCount);
    case 'too-short':
      return words['too-short'](formatYearCount(ground.years));
    case 'compared':
      return words.compared(ground.intervalCount, formatYearCount(ground.years));
    case 'others-steady':
      return words['others-steady'](ground.stringCount, formatSpeed(ground.ruledOutCentsPerYear));
    case 'pins-open':
      return words['pins-open'](namesOf(ground.pins, pins));
    case 'season-inferred':
      return words['season-inferred'];
  }
}

function namesOf(named: readonly GroundPin[], all: Drift['pins']): string {
  const nameOf = stringNamer(all);
  const list = named.slice(0, MOST_NAMED).map((pin) => words.pin(nameOf(pin), formatSpeed(pin.centsPerYear)));
  const more = named.length - MOST_NAMED;
  return list.join(', ') + (more > 0 ? words.more(more) : '');
}

export function outlierWords(because: OutlierReason): string {
  const { because: words } = texts.stability.pins;
  const cents = formatCentsSize(because.offCents);
  switch (because.kind) {
    case 'stood-off-once':
      return words['stood-off-once'](cents);
    case 'found-off-once':
      return words['found-off-once'][because.direction](cents);
    case 'left-off':
      return words['left-off'](cents);
  }
}
