/** What a size's number typed as a diameter is taken for: a choice of this device, since workshops think in one series or the other. */

import { gaugeOfNumber, inchesToMm } from '../../piano/wireGauge.ts';
import type { CellProblem, CellReading, ScheduleField } from '../../piano/wireScheduleCell.ts';
import { deviceSetting } from '../../ui/deviceSetting.ts';

export type GaugeTyping = 'ask' | 'inch' | 'metric';

export const gaugeTypingSetting = deviceSetting<GaugeTyping>('stillpin.gauge-typing', ['ask', 'inch', 'metric']);

/** The size of the chosen series in place of a complaint; the reading itself for everything else. */
export function withGaugeTyping(reading: CellReading, field: ScheduleField, typing: GaugeTyping): CellReading {
  if (reading.ok || reading.problem.kind !== 'gauge-number') return reading;
  const gauge = reading.problem.gauges.find(({ series }) => series === typing);
  return gauge ? { ok: true, change: { [field]: gauge.diameterMm } } : reading;
}

/**
 * What somebody types who names the series or the unit: `17 inch`, `13½ metric` (a letter is enough) or `0.039 in`, as millimetres that a cell
 * reads; anything else as it is.
 * @example namedSize('17 i') // '0.9906'
 */
export function namedSize(text: string): string {
  const [, whole = '', half, unit = ''] =
    /^(\d+(?:[.,]\d+)?)(½|\s1\/2)?\s*(i|in|inch|m|metric)$/i.exec(text.trim()) ?? [];
  if (unit === '') return text;
  const value = Number(whole.replace(',', '.')) + (half ? 0.5 : 0);
  const series = unit.toLowerCase().startsWith('i') ? 'inch' : 'metric';
  const isInches = series === 'inch' && value < 1;
  const diameterMm = isInches ? inchesToMm(value) : gaugeOfNumber(series, value)?.diameterMm;
  return diameterMm === undefined ? text : plainText(diameterMm);
}

function plainText(diameterMm: number): string {
  return String(Number(diameterMm.toFixed(4)));
}

/** Texts that would be understood in place of a refused one. */
export function meaningsOf(problem: CellProblem): { readonly diameterMm: number; readonly text: string }[] {
  const diameters =
    problem.kind === 'gauge-number'
      ? problem.gauges.map(({ diameterMm }) => diameterMm)
      : problem.kind === 'inches'
        ? [problem.diameterMm]
        : [];
  return diameters.map((diameterMm) => ({ diameterMm, text: plainText(diameterMm) }));
}
