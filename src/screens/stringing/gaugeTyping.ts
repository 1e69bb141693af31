/** What a size's number typed as a diameter is taken for: a choice of this device, since workshops think in one series or the other. */
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

/** Texts that would be understood in place of a refused one. */
export function meaningsOf(problem: CellProblem): { readonly diameterMm: number; readonly text: string }[] {
  const diameters =
    problem.kind === 'gauge-number'
      ? problem.gauges.map(({ diameterMm }) => diameterMm)
      : problem.kind === 'inches'
        ? [problem.diameterMm]
        : [];
  return diameters.map((diameterMm) => ({ diameterMm, text: String(Number(diameterMm.toFixed(4))) }));
}
