import { type ClockCalibration, type ClockOffset, isOffsetTold } from '../../piano/clock.ts';
import { formatDate } from '../../piano/format.ts';
import { formatPpm, formatPpmAsCents } from '../../piano/formatClock.ts';
import type { Survey } from '../../piano/instrument.ts';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';

const words = texts.clock.survey;
const { fast, slow, flat, sharp } = texts.clock.result;

/** What is known of the clock that a survey was recorded with. Stated, and never taken into the figures. */
export function ClockSection({ survey }: { readonly survey: Survey }) {
  const { clockAgainstSystem, calibration } = survey;
  if (survey.sampleRateHz === null || (!clockAgainstSystem && !calibration)) return null;
  return (
    <Section title={words.title} note={words.note}>
      <p>{clockAgainstSystem ? systemSentence(clockAgainstSystem) : words.noEvidence}</p>
      <p>{calibration ? calibrationSentence(calibration) : words.notCalibrated}</p>
    </Section>
  );
}

const pace = ({ offsetPpm }: ClockOffset) => (offsetPpm >= 0 ? fast : slow);

function systemSentence(offset: ClockOffset): string {
  return words.againstSystem(formatPpm(offset), pace(offset), formatPpmAsCents(offset.offsetPpm));
}

function calibrationSentence(calibration: ClockCalibration): string {
  const { measuredAt, reference, offsetPpm } = calibration;
  const checked = words.calibrated(
    formatDate(measuredAt),
    words.kinds[reference.kind],
    formatPpm(calibration),
    pace(calibration),
  );
  const reads = words.reads(formatPpmAsCents(offsetPpm), offsetPpm >= 0 ? flat : sharp);
  return `${checked} ${isOffsetTold(calibration) ? reads : words.notTold}`;
}
