import {
  CartesianGrid,
  ResponsiveContainer,
  Scatter,
  ScatterChart,
  usePlotArea,
  useXAxisScale,
  XAxis,
  YAxis,
} from 'recharts';
import { formatNumber } from '../../piano/format.ts';
import { roundScale } from '../chartScale.ts';
import { texts } from '../texts.ts';
import styles from './held.module.css';
import { SpanSign } from './SpanSign.tsx';
import type { SpanRow } from './spanRow.ts';

const ROW_HEIGHT = 46;
const AXIS_HEIGHT = 56;
/** Below it the table says the rest. */
const NARROWEST_FOR_DETAIL = 520;
const AXIS_TEXT = { fill: 'var(--ink-soft)', fontSize: 14 };
const TITLE_TEXT = { fill: 'var(--ink-soft)', fontSize: 13 };

type Props = { readonly summary: string; readonly rows: readonly SpanRow[] };

/** A bar for each job over the years since the work. */
export function SpansChart({ summary, rows }: Props) {
  const scale = roundScale(rows.map(({ toYears }) => toYears));
  return (
    <div className={styles.spans} role="img" aria-label={summary}>
      <ResponsiveContainer width="100%" height={rows.length * ROW_HEIGHT + AXIS_HEIGHT}>
        <ScatterChart margin={{ top: 4, right: 24, bottom: 18, left: 12 }} accessibilityLayer={false}>
          <CartesianGrid stroke="var(--rule)" horizontal={false} />
          <XAxis
            type="number"
            dataKey="x"
            domain={[0, scale.high]}
            ticks={scale.ticks.filter((tick) => tick >= 0)}
            tickFormatter={(value: number) => formatNumber(value, Number.isInteger(value) ? 0 : 1)}
            tick={AXIS_TEXT}
            stroke="var(--rule-strong)"
            label={{ value: texts.held.yearsSince, position: 'insideBottom', offset: -12, ...TITLE_TEXT }}
          />
          <YAxis type="number" dataKey="y" domain={[0, rows.length]} hide />
          <Scatter data={[{ x: 0, y: 0 }]} shape={() => <g />} isAnimationActive={false} />
          <SpanLayer rows={rows} />
        </ScatterChart>
      </ResponsiveContainer>
    </div>
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
