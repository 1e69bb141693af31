import { formatShare } from '../../piano/format.ts';
import { formatGaugeSize, formatLengthMm, formatWireMm } from '../../piano/formatStringing.ts';
import type { DiameterJudgement } from '../../stringing/wireCheck/diameterFromB.ts';
import { texts } from '../../ui/texts.ts';
import { stringName } from './measuredB.ts';

const words = texts.stringing.measured;

/** What does not fit, what would, and what else could make the same. @param statedLengthMm of the schedule; null where it holds none */
export function findingSentences(finding: DiameterJudgement, statedLengthMm: number | null): string[] {
  const { verdict, midi, stringPosition, probability, fittingGauge, isOutOfRun } = finding;
  if (verdict === 'fits') return [];
  const string = stringName(midi, stringPosition);
  const stated = formatWireMm(finding.statedDiameterMm);
  if (verdict === 'nothing-fits') return [words.findings['nothing-fits'](string, stated)];
  const fitting = fittingGauge
    ? [words.fitting(formatGaugeSize(fittingGauge), formatShare(finding.fittingGaugeProbability))]
    : [];
  return [
    words.findings[verdict](string, stated, formatShare(probability)),
    ...fitting,
    words.free(formatWireMm(finding.fittingDiameterMm), formatWireMm(finding.fittingDiameterStandardUncertaintyMm)),
    words.lengthInstead(formatLengthMm(finding.fittingLengthMm), formatLengthMm(statedLengthMm)),
    ...(isOutOfRun ? [words.outOfRun] : []),
  ];
}
