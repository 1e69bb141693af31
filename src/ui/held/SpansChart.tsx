import { usePlotArea, useXAxisScale, YAxis } from 'recharts';
import { roundScale } from '../chartScale.ts';
import { AcrossAxis } from '../charts/Axes.tsx';
import { plainTick } from '../charts/axisTicks.ts';
import { PlotFrame } from '../charts/PlotFrame.tsx';
import { UnseenPoint } from '../charts/UnseenPoint.tsx';
import { texts } from '../texts.ts';
import styles from './held.module.css';
import { SpanSign } from './SpanSign.tsx';
import { type SpanRow, spansHeightPx } from './spanRow.ts';

/** Below it the table says the rest. */
const NARROWEST_FOR_DETAIL = 520;

type Props = { readonly summary: string; readonly rows: readonly SpanRow[] };

/** A bar for each job over the years since the work. */
export function SpansChart({ summary, rows }: Props) {
  const scale = roundScale(rows.map(({ toYears }) => toYears));
  const ticks = scale.ticks.filter((tick) => tick >= 0);
  return (
    <PlotFrame
      summary={summary}
      className={styles.spans}
      heightPx={spansHeightPx(rows)}
      margin={{ top: 4, right: 24, bottom: 18, left: 12 }}
      lines="upright"
    >
      <AcrossAxis scale={{ low: 0, high: scale.high, ticks }} formatTick={plainTick} title={texts.held.yearsSince} />
      <YAxis type="number" dataKey="y" domain={[0, rows.length]} hide />
      <UnseenPoint />
      <SpanLayer rows={rows} />
    </PlotFrame>
  );
}

function SpanLayer({ rows }: { readonly rows: readonly SpanRow[] }) {
  const xOf = useXAxisScale();
  const area = usePlotArea();
  if (!xOf || !area) return null;
  const rowHeight = area.height / rows.length;
  return (
    <g>
      {rows.map(({ key, name, detail, fromYears, toYears, end }, index) => {
        const top = area.y + index * rowHeight;
        const [begin, from, to] = [xOf(0) ?? 0, xOf(fromYears) ?? 0, xOf(toYears) ?? 0];
        const y = top + rowHeight - 14;
        return (
          <g key={key}>
            <text className={styles.name} x={area.x + 4} y={top + 16}>
              {name} {area.width >= NARROWEST_FOR_DETAIL && <tspan className={styles.soft}>{detail}</tspan>}
            </text>
            <path className={styles.unwatched} d={`M${begin} ${y}H${from}`} />
            <path className={styles.watched} d={`M${from} ${y}H${to}`} />
            <SpanSign end={end} x={to} y={y} />
          </g>
        );
      })}
    </g>
  );
}
