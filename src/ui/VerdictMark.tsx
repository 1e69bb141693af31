import { type Sign, SquareSign } from './SquareSign.tsx';

export type BlockState = 'holding' | 'watch' | 'giving way' | 'not enough evidence';

const SIGNS: Record<BlockState, Sign> = {
  holding: 'tick',
  watch: 'half',
  'giving way': 'cross',
  'not enough evidence': 'open',
};

/** The sign of a verdict on a pin block. */
export function VerdictMark({ state }: { readonly state: BlockState }) {
  return <SquareSign sign={SIGNS[state]} />;
}
