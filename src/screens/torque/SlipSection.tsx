import { formatCents, formatSigned } from '../../piano/format.ts';
import { formatTorqueInBoth } from '../../piano/formatTorque.ts';
import type { Instrument } from '../../piano/instrument.ts';
import type { JudgedPin } from '../../stability/drift/judgedPin.ts';
import {
  FEWEST_PINS,
  rankAgreement,
  slippingAndSteady,
  type TorqueAndSlip,
  torqueAndSlip,
} from '../../stability/torqueAgainstSlip.ts';
import type { PinTorque } from '../../stability/torquePins.ts';
import { breakMarks } from '../../ui/breakMarks.ts';
import { roundScale } from '../../ui/chartScale.ts';
import type { NoteSeries } from '../../ui/NotesChart.tsx';
import { NotesFigure } from '../../ui/NotesFigure.tsx';
import { texts } from '../../ui/texts.ts';
import { TorqueAgainstSlip } from '../../ui/torque/TorqueAgainstSlip.tsx';
import { pinName } from './deskWords.ts';
import styles from './torque.module.css';

const words = texts.torque.slip;

type Props = {
  readonly instrument: Instrument;
  readonly torques: readonly PinTorque[];
  readonly pins: readonly JudgedPin[];
};

/** The years of readings beside the torques: slip in pin order, and torque against slip. */
export function SlipSection({ instrument, torques, pins }: Props) {
  const series = slipSeries(pins);
  if (series.length === 0) return <p>{words.none}</p>;
  const pairs = torqueAndSlip(torques, pins);
  return (
    <>
      <NotesFigure
        axisTitle={`${words.ratesTitle}. ${words.bars}`}
        name={words.ratesName}
        column="slip_cents_per_year"
        summary={words.ratesSummary(pins.length)}
        series={series}
        scale={roundScale(series.flatMap(({ points }) => points.flatMap(({ low, high }) => [low, high])))}
        compass={instrument.compass}
        marks={breakMarks(instrument)}
      />
      <TorqueAgainstSlip pins={pairs} />
      {pairs.length > 0 && <p className={styles.text}>{`${kindsWords(pairs)} ${rankWords(pairs)}`.trim()}</p>}
    </>
  );
}

/** How many standard uncertainties the bars reach either way. */
const BAR_SIGMAS = 2;
const STRING_SPACING = 0.25;

function slipSeries(pins: readonly JudgedPin[]): NoteSeries[] {
  const pointsOf = (own: readonly JudgedPin[]) =>
    own.flatMap(({ midi, stringPosition, slip }) => {
      const { centsPerYear, standardUncertainty } = slip;
      if (centsPerYear === null || standardUncertainty === null) return [];
      const reach = BAR_SIGMAS * standardUncertainty;
      const x = midi + (stringPosition === 0 ? 0 : (stringPosition - 2) * STRING_SPACING);
      const detail = `${pinName({ midi, stringPosition })}: ${formatCents(centsPerYear, standardUncertainty)}`;
      return [{ x, y: centsPerYear, low: centsPerYear - reach, high: centsPerYear + reach, detail }];
    });
  const series: NoteSeries[] = [
    { name: words.steady, shape: 'disc', points: pointsOf(pins.filter((pin) => !pin.isFlagged)) },
    { name: words.flagged, shape: 'triangle', points: pointsOf(pins.filter((pin) => pin.isFlagged)) },
  ];
  return series.filter(({ points }) => points.length > 0);
}

function kindsWords(pairs: readonly TorqueAndSlip[]): string {
  const kinds = slippingAndSteady(pairs);
  if (!kinds) return '';
  const { slippingCount, slippingMedianNm, steadyCount, steadyMedianNm } = kinds;
  return words.kinds(
    slippingCount,
    formatTorqueInBoth(slippingMedianNm),
    steadyCount,
    formatTorqueInBoth(steadyMedianNm),
  );
}

function rankWords(pairs: readonly TorqueAndSlip[]): string {
  const agreement = rankAgreement(pairs);
  if (!agreement) return words.rankFew(FEWEST_PINS);
  const { rho, low, high, pinCount } = agreement;
  return words.rank(formatSigned(rho, 2), formatSigned(low, 2), formatSigned(high, 2), pinCount);
}
