import { texts } from '../../ui/texts.ts';
import styles from './TrialRecorder.module.css';
import { sideBefore, type TrialSide } from './trialSides.ts';

const words = texts.strings.trials.record;

/** What was recorded so far: before, and after each thing that was done. */
export function SideList({ sides }: { readonly sides: readonly TrialSide[] }) {
  return (
    <ol className={styles.sides}>
      {sides.map((side, index) => {
        const before = sideBefore(sides, index);
        return (
          <li key={side.trialId ?? 'before'} aria-current={index === sides.length - 1 ? 'step' : undefined}>
            <strong>{sideName(side)}</strong>: {words.takes(side.takeIds.length)}
            {side.faultyCount > 0 && `, ${words.faulty(side.faultyCount)}`}
            {side.kind && before && `, ${words.against(sideName(before))}`}
          </li>
        );
      })}
    </ol>
  );
}

function sideName({ kind }: TrialSide): string {
  return kind === null ? words.before : words.after(texts.strings.trials.kinds[kind]);
}
