import { type ReactNode, Suspense, useRef } from 'react';
import { texts } from '../texts.ts';
import { useNear } from './useNear.ts';

type PictureProps = {
  /** One sentence that says what the picture shows: read aloud before it is drawn, too. */
  readonly summary: string;
  /** Gives the place the height of the picture, unless that is said in pixels, so that nothing moves when it comes. */
  readonly className?: string | undefined;
  readonly heightPx?: number;
  /** What draws it, fetched with the chart library. */
  readonly children: ReactNode;
};

/** The place of a picture, which is drawn when it comes near what is seen of the page. */
export function Picture({ summary, className, heightPx, children }: PictureProps) {
  const place = useRef<HTMLDivElement>(null);
  const isNear = useNear(place);
  const awaited = (
    <div className={className} style={{ height: heightPx }} role="img" aria-label={summary}>
      {texts.charts.drawing}
    </div>
  );
  return <div ref={place}>{isNear ? <Suspense fallback={awaited}>{children}</Suspense> : awaited}</div>;
}
