import { formatNotes } from '../../piano/format.ts';
import { LegendSymbol } from '../ChartSymbol.tsx';
import { ChartFigure } from '../charts/ChartFigure.tsx';
import { Picture } from '../charts/Picture.tsx';
import { fetchedOnce } from '../fetchedOnce.ts';
import { texts } from '../texts.ts';
import styles from './SlipChart.module.css';
import { slipPoints, slipSheet, type TorqueSlipPin } from './slipPoints.ts';

const SLIP_CHART = fetchedOnce(async () => (await import('./SlipChart.tsx')).SlipChart);

const words = texts.torque.slip;

/** Whether the pins that go flat are the ones that turn easily: a sign for each pin, the fastest ones named. */
export function TorqueAgainstSlip({ pins }: { readonly pins: readonly TorqueSlipPin[] }) {
  if (pins.length === 0) return <p>{words.againstNone}</p>;
  const { points, beyond } = slipPoints(pins);
  const standing = beyond.length === 0 ? words.noneBeyond : words.beyond(formatNotes(notesOf(beyond)));
  return (
    <>
      <ChartFigure
        name={words.againstName}
        title={`${words.againstTitle}. ${words.bars}`}
        legend={[{ key: 'pin', sign: <LegendSymbol shape="disc" />, meaning: texts.torque.over.pins }]}
        sheet={() => slipSheet(pins)}
      >
        <Picture
          drawing={SLIP_CHART}
          className={styles.chart}
          chart={{ summary: words.againstSummary(pins.length, standing), points }}
        />
      </ChartFigure>
      <p>{standing}</p>
    </>
  );
}

function notesOf(pins: readonly TorqueSlipPin[]): number[] {
  return [...new Set(pins.map(({ midi }) => midi))].sort((a, b) => a - b);
}
