import { Button } from '../ui/Button.tsx';
import { Notice } from '../ui/Notice.tsx';
import styles from '../ui/running.module.css';
import { texts } from '../ui/texts.ts';
import type { Judgement } from './useJudgement.ts';

const words = texts.stability.judging;

type Props = {
  readonly judgement: Exclude<Judgement, { state: 'judged' }>;
  readonly readingCount: number;
};

/** What stands where a judgement is still being made, or came to nothing. */
export function JudgingState({ judgement, readingCount }: Props) {
  if (judgement.state === 'judging')
    return (
      <div className={styles.running}>
        <progress className={styles.progress} aria-label={texts.stability.title} />
        <span role="status">{words.working(readingCount)}</span>
        <Button onPress={judgement.cancel}>{words.cancel}</Button>
      </div>
    );
  return (
    <div className={styles.running}>
      {judgement.state === 'failed' ? (
        <Notice kind="fault" word={texts.common.faultWord} isUrgent>
          {words.failed(judgement.detail)}
        </Notice>
      ) : (
        <p>{words.cancelled}</p>
      )}
      <Button look="primary" onPress={judgement.again}>
        {words.again}
      </Button>
    </div>
  );
}
