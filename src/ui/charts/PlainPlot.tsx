/** A drawing of lines, signs and columns against two axes, as plain SVG; for pictures that stand still. */
import { useId, useRef } from 'react';
import { ChartSymbol, type ChartSymbolShape } from '../ChartSymbol.tsx';
import styles from './PlainPlot.module.css';
import { type Inner, innerOf, type Place, type PlotTick, pathOf, placeIn, uncrowded } from './plainPlotLayout.ts';
import { useWidthWhenNear } from './useWidth.ts';

export type PlotLayer =
  | { readonly kind: 'line'; readonly look: 'measured' | 'fitted' | 'expected'; readonly points: readonly Place[] }
  | {
      readonly kind: 'signs';
      readonly shape: ChartSymbolShape;
      readonly points: readonly (Place & { readonly low?: number; readonly high?: number })[];
    }
  | {
      readonly kind: 'columns';
      readonly columns: readonly { readonly from: number; readonly to: number; readonly y: number }[];
    }
  /** Short strokes at the upper edge, in a row of their own. */
  | {
      readonly kind: 'strokes';
      readonly row: 0 | 1;
      readonly look: 'fitted' | 'expected';
      readonly at: readonly number[];
    };

export type PlotAxis = { readonly low: number; readonly high: number; readonly ticks: readonly PlotTick[] };

export type PlainPlotProps = {
  /** One sentence that says what the picture shows. */
  readonly summary: string;
  readonly x: PlotAxis & { readonly title: string };
  readonly y: PlotAxis;
  readonly layers: readonly PlotLayer[];
  readonly isLow?: boolean;
};

/** For a label such as “6000”. */
const LABEL_ROOM_PX = 34;

export function PlainPlot(props: PlainPlotProps) {
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidthWhenNear(frame);
  return (
    <div ref={frame} className={styles.frame} data-low={props.isLow}>
      {width > 0 ? (
        <Drawing {...props} width={width} />
      ) : (
        <div className={styles.awaited} role="img" aria-label={props.summary} />
      )}
    </div>
  );
}

function Drawing({ summary, x, y, layers, isLow, width }: PlainPlotProps & { readonly width: number }) {
  const height = isLow ? 170 : 270;
  const rows = layers.filter(({ kind }) => kind === 'strokes').length;
  const inner = innerOf(width, height, rows);
  const place = placeIn(inner, x, y);
  const fieldId = useId();
  return (
    <svg className={styles.drawing} viewBox={`0 0 ${width} ${height}`} width={width} height={height} role="img">
      <title>{summary}</title>
      <clipPath id={fieldId}>
        <rect x={inner.left} y={inner.top} width={inner.right - inner.left} height={inner.bottom - inner.top} />
      </clipPath>
      {y.ticks.map(({ at, label }) => (
        <g key={at}>
          <path
            className={at === 0 && y.low < 0 ? styles.nought : styles.grid}
            d={`M${inner.left} ${place.y(at)}H${inner.right}`}
          />
          <text className={styles.figure} data-stands="left" x={inner.left - 8} y={place.y(at) + 5}>
            {label}
          </text>
        </g>
      ))}
      {uncrowded(x.ticks, place.x, LABEL_ROOM_PX).map(({ at, label }) => (
        <g key={at}>
          <path className={styles.tick} d={`M${place.x(at)} ${inner.bottom}v5`} />
          <text className={styles.figure} data-stands="below" x={place.x(at)} y={inner.bottom + 20}>
            {label}
          </text>
        </g>
      ))}
      <text className={styles.figure} data-stands="left" x={inner.right} y={height - 2}>
        {x.title}
      </text>
      {layers.map((layer, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: layers never change their order
        <Layer key={index} layer={layer} place={place} inner={inner} clip={`url(#${fieldId})`} />
      ))}
    </svg>
  );
}

type LayerProps = {
  readonly layer: PlotLayer;
  readonly place: ReturnType<typeof placeIn>;
  readonly inner: Inner;
  readonly clip: string;
};

function Layer({ layer, place, inner, clip }: LayerProps) {
  switch (layer.kind) {
    case 'line':
      return <path className={styles[layer.look]} d={pathOf(layer.points, place)} clipPath={clip} />;
    case 'columns':
      return (
        <path
          className={styles.columns}
          clipPath={clip}
          d={layer.columns
            .map(
              ({ from, to, y }) =>
                `M${place.x(from) + 1} ${inner.bottom}V${place.y(y)}H${place.x(to) - 1}V${inner.bottom}Z`,
            )
            .join('')}
        />
      );
    case 'strokes': {
      const top = 4 + 14 * layer.row;
      return <path className={styles[layer.look]} d={layer.at.map((at) => `M${place.x(at)} ${top}v10`).join('')} />;
    }
    case 'signs':
      return (
        <g>
          <path
            className={styles.bars}
            d={layer.points
              .flatMap(({ x, low, high }) =>
                low === undefined || high === undefined ? [] : [`M${place.x(x)} ${place.y(low)}V${place.y(high)}`],
              )
              .join('')}
          />
          {layer.points.map((point) => (
            <ChartSymbol key={point.x} shape={layer.shape} x={place.x(point.x)} y={place.y(point.y)} />
          ))}
        </g>
      );
  }
}
