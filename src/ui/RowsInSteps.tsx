import { memo, type ReactNode, startTransition, useEffect, useState } from 'react';
import { flushSync } from 'react-dom';

/** As many rows as a screen shows at once. Chosen. */
const STEP = 20;

type RowsInStepsProps = {
  readonly rowCount: number;
  /** Makes a row, with its key. Another function makes all rows anew. */
  readonly rowAt: (index: number) => ReactNode;
};

/**
 * The rows of a table. Of a long one those that a screen shows are made at once, and soon after all others, in short steps between which
 * the page answers. Whoever prints gets all of them.
 */
export function RowsInSteps({ rowCount, rowAt }: RowsInStepsProps) {
  const [madeCount, setMadeCount] = useState(STEP);
  useEffect(() => {
    if (madeCount >= rowCount) return;
    const next = setTimeout(() => startTransition(() => setMadeCount(madeCount + STEP)));
    const makeAll = () => flushSync(() => setMadeCount(rowCount));
    window.addEventListener('beforeprint', makeAll);
    return () => {
      clearTimeout(next);
      window.removeEventListener('beforeprint', makeAll);
    };
  }, [madeCount, rowCount]);
  const shownCount = Math.min(madeCount, rowCount);
  return Array.from({ length: Math.ceil(shownCount / STEP) }, (_, step) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: a step is its place
    <Step key={step} from={step * STEP} to={Math.min(shownCount, (step + 1) * STEP)} rowAt={rowAt} />
  ));
}

type StepProps = { readonly from: number; readonly to: number; readonly rowAt: (index: number) => ReactNode };

/** Stays as it is while another one is made. */
const Step = memo(function Step({ from, to, rowAt }: StepProps) {
  return Array.from({ length: to - from }, (_, index) => rowAt(from + index));
});
