import { type ComponentType, Suspense, use, useEffect, useRef } from 'react';
import type { Fetched } from '../fetchedOnce.ts';
import { texts } from '../texts.ts';
import { whenIdle } from '../whenIdle.ts';
import { useNear } from './useNear.ts';

type PictureProps<Chart> = {
  /** What is drawn, and by what: it comes with the chart library, which is large. */
  readonly chart: Chart;
  readonly drawing: Fetched<ComponentType<Chart>>;
  /** Gives the place the height of the picture, unless that is said in pixels, so that nothing moves when it comes. */
  readonly className?: string | undefined;
  readonly heightPx?: number;
};

/**
 * The place of a picture, which is drawn when it comes near what is seen of the page. What draws it is fetched as soon as the page has
 * nothing else to do, so that a page that is printed shows all its pictures.
 */
export function Picture<Chart extends { readonly summary: string }>(props: PictureProps<Chart>) {
  const { chart, drawing, className, heightPx } = props;
  const place = useRef<HTMLDivElement>(null);
  const isNear = useNear(place);
  useEffect(() => whenIdle(drawing.fetchAhead), [drawing]);
  const awaited = (
    <div className={className} style={{ height: heightPx }} role="img" aria-label={chart.summary}>
      {texts.charts.drawing}
    </div>
  );
  return (
    <div ref={place}>
      {isNear ? (
        <Suspense fallback={awaited}>
          <Drawn chart={chart} drawing={drawing} />
        </Suspense>
      ) : (
        awaited
      )}
    </div>
  );
}

function Drawn<Chart extends object>({ chart, drawing }: Pick<PictureProps<Chart>, 'chart' | 'drawing'>) {
  const Drawing = drawing.now() ?? use(drawing.fetch());
  return <Drawing {...chart} />;
}
