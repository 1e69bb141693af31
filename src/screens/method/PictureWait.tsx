import { Notice } from '../../ui/Notice.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './method.module.css';
import type { WorkedOut } from './useWorkedOut.ts';

/** What stands in a picture's place until it is there. */
export function PictureWait({ of }: { readonly of: Exclude<WorkedOut<unknown>, { state: 'ready' }> }) {
  if (of.state === 'failed')
    return (
      <Notice kind="fault" word={texts.common.faultWord}>
        {texts.method.failed(of.detail)}
      </Notice>
    );
  return (
    <p className={styles.waiting} role="status">
      {texts.method.working}
    </p>
  );
}
