import { Notice } from './Notice.tsx';
import styles from './ReadState.module.css';
import { texts } from './texts.ts';

/** What stands where records are still being read, or could not be. */
export function ReadState({
  observed,
}: {
  readonly observed: { readonly state: 'loading' } | { readonly state: 'failed'; readonly message: string };
}) {
  if (observed.state === 'failed')
    return (
      <Notice kind="fault" word={texts.common.faultWord} isUrgent>
        {texts.common.readFault(observed.message)}
      </Notice>
    );
  return (
    <p className={styles.loading} role="status">
      {texts.common.loading}
    </p>
  );
}
