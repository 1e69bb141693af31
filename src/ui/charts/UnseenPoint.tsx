import { Scatter } from 'recharts';

/** The chart library draws no axes without a point, so that a picture of other things has one that nobody sees. */
export function UnseenPoint() {
  return <Scatter data={[{ x: 0, y: 0 }]} shape={() => <g />} isAnimationActive={false} />;
}
