import { ReferenceLine } from 'recharts';

const MARK_TEXT = { fill: 'var(--ink-soft)', fontSize: 12 };

export type PlotMark = { readonly x: number; readonly label: string };

type MarkLinesProps = {
  readonly marks: readonly PlotMark[];
  /** How far above the axes the names stand, in CSS pixels: two heights where neighbours would run into each other. */
  readonly heightsPx: readonly number[];
};

/** An upright line for each mark, with its name above. */
export function MarkLines({ marks, heightsPx }: MarkLinesProps) {
  return marks.map((mark, index) => (
    <ReferenceLine
      key={`${mark.x} ${mark.label}`}
      x={mark.x}
      stroke="var(--rule-strong)"
      strokeDasharray="2 4"
      label={{ value: mark.label, position: 'top', offset: heightsPx[index % heightsPx.length] ?? 4, ...MARK_TEXT }}
    />
  ));
}

export function ZeroLine() {
  return <ReferenceLine y={0} stroke="var(--ink)" strokeWidth={1.5} />;
}

/** A limit drawn across, with its name. */
export function LimitLine({ limit: { y, label } }: { readonly limit: { readonly y: number; readonly label: string } }) {
  return (
    <ReferenceLine
      y={y}
      stroke="var(--ink)"
      strokeDasharray="8 4"
      label={{ value: label, position: 'insideBottomLeft', ...MARK_TEXT }}
    />
  );
}
