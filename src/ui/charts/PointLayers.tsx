import { Scatter, Tooltip } from 'recharts';
import { ChartSymbol } from '../ChartSymbol.tsx';
import { BarLayer } from './BarLayer.tsx';
import { type ChartSeries, type DrawnPoint, pointBox } from './pointParts.tsx';

/** The readings with their uncertainty bars, and the box beside the pointer. */
export function PointLayers({ series }: { readonly series: readonly ChartSeries[] }) {
  return (
    <>
      <BarLayer points={series.flatMap(({ points }) => points)} />
      <Tooltip cursor={false} isAnimationActive={false} content={pointBox} />
      {series.map(({ name, shape, points }) => (
        <Scatter
          key={name}
          name={name}
          data={[...points]}
          isAnimationActive={false}
          shape={({ cx, cy, tag }: DrawnPoint) => <ChartSymbol shape={shape} x={cx} y={cy} tag={tag} />}
        />
      ))}
    </>
  );
}
