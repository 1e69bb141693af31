import { useId } from 'react';
import { usePlotArea, useYAxisScale } from 'recharts';
import styles from './NoteBandLayer.module.css';

/** A stretch of the upright axis that has a name. */
export type NoteBand = {
  readonly low: number;
  /** Null: to the top of the chart. */
  readonly high: number | null;
  readonly label: string;
  /** Set off from the others by hatching, so that it shows without its colour. */
  readonly isHatched: boolean;
};

/** Drawn under everything else. */
export function NoteBandLayer({ bands }: { readonly bands: readonly NoteBand[] }) {
  const place = useBandPlaces(bands);
  const patternId = `hatch-${useId().replace(/\W/g, '')}`;
  if (!place) return null;
  const { area, places } = place;
  return (
    <g>
      <defs>
        <pattern id={patternId} width={7} height={7} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path className={styles.hatch} d="M0 0v7" />
        </pattern>
      </defs>
      {places.map(({ band, y, height }) => (
        <g key={band.label}>
          {band.isHatched && <rect x={area.x} y={y} width={area.width} height={height} fill={`url(#${patternId})`} />}
          {y > area.y && <path className={styles.edge} d={`M${area.x} ${y}h${area.width}`} />}
        </g>
      ))}
    </g>
  );
}

const NARROWEST_FOR_NAMES = 420;
const LEAST_HEIGHT_FOR_NAME = 15;

/** Drawn over everything else, at the right edge. */
export function NoteBandNames({ bands }: { readonly bands: readonly NoteBand[] }) {
  const place = useBandPlaces(bands);
  if (!place || place.area.width < NARROWEST_FOR_NAMES) return null;
  const { area, places } = place;
  return (
    <g>
      {places
        .filter(({ height }) => height >= LEAST_HEIGHT_FOR_NAME)
        .map(({ band, y }) => (
          <text key={band.label} className={styles.label} x={area.x + area.width - 4} y={y + 12}>
            {band.label}
          </text>
        ))}
    </g>
  );
}

/** Where the bands lie on the drawing, cut off at its edges; those outside it are left out. */
function useBandPlaces(bands: readonly NoteBand[]) {
  const yOf = useYAxisScale();
  const area = usePlotArea();
  if (!yOf || !area) return null;
  const bottom = area.y + area.height;
  const within = (value: number) => Math.min(Math.max(yOf(value) ?? bottom, area.y), bottom);
  const places = bands
    .map((band) => {
      const y = band.high === null ? area.y : within(band.high);
      return { band, y, height: within(band.low) - y };
    })
    .filter(({ height }) => height > 0);
  return { area, places };
}
