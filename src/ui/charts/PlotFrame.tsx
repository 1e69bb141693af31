import type { ReactNode } from 'react';
import { CartesianGrid, ResponsiveContainer, ScatterChart } from 'recharts';

type PlotFrameProps = {
  /** One sentence that says what the picture shows; the numbers stand in a table beside it. */
  readonly summary: string;
  /** Gives the picture its height, unless that is said in pixels. */
  readonly className: string | undefined;
  readonly heightPx?: number;
  /** Around the axes, in CSS pixels. */
  readonly margin: { readonly top: number; readonly right: number; readonly bottom: number; readonly left: number };
  readonly lines?: 'across' | 'upright' | 'both';
  /** Axes and what is drawn between them. */
  readonly children: ReactNode;
};

/** A picture as wide as its place, with lines at the ticks, that is one picture to a screen reader. */
export function PlotFrame({ summary, className, heightPx, margin, lines = 'across', children }: PlotFrameProps) {
  return (
    <div className={className} role="img" aria-label={summary}>
      <ResponsiveContainer width="100%" height={heightPx ?? '100%'}>
        <ScatterChart margin={margin} accessibilityLayer={false}>
          <CartesianGrid stroke="var(--rule)" horizontal={lines !== 'upright'} vertical={lines !== 'across'} />
          {children}
        </ScatterChart>
      </ResponsiveContainer>
    </div>
  );
}
