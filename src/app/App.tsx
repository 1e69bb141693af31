import type { ReactNode } from 'react';
import { Button } from '../ui/Button.tsx';
import { Notice } from '../ui/Notice.tsx';
import { ReadState } from '../ui/ReadState.tsx';
import { texts } from '../ui/texts.ts';
import { underWayOn } from './busyScreens.ts';
import { CareNotice } from './CareNotice.tsx';
import { ErrorBoundary } from './ErrorBoundary.tsx';
import { NewVersionNotice } from './NewVersionNotice.tsx';
import { ScreenOfRoute } from './ScreenOfRoute.tsx';
import styles from './Shell.module.css';
import { Shell } from './Shell.tsx';
import { useRecords } from './useRecords.ts';
import { useRoute } from './useRoute.ts';
import { useScrollMemory } from './useScrollMemory.ts';

export function App() {
  const { route, address } = useRoute();
  useScrollMemory(address);
  const underWay = underWayOn(route.screen);
  const records = useRecords(underWay !== 'nothing');
  return (
    <Shell isBusy={underWay === 'entry'}>
      <NewVersionNotice route={route} />
      {records.state === 'open' && <CareNotice route={route} records={records.records} />}
      <ErrorBoundary key={address}>
        {records.state === 'open' && <ScreenOfRoute route={route} records={records.records} />}
        {records.state === 'opening' && !records.isBlocked && <ReadState observed={{ state: 'loading' }} />}
        {records.state === 'opening' && records.isBlocked && (
          <Notice kind="note" word={texts.common.otherPages.word} isUrgent>
            {texts.common.otherPages.blocked}
          </Notice>
        )}
        {records.state === 'closed' && <Closed />}
        {records.state === 'unavailable' && <Unavailable message={records.message} />}
      </ErrorBoundary>
    </Shell>
  );
}

function Closed() {
  return (
    <ReadyToReload title={texts.common.otherPages.closedTitle}>
      <p>{texts.common.otherPages.closed}</p>
    </ReadyToReload>
  );
}

function Unavailable({ message }: { readonly message: string }) {
  return (
    <ReadyToReload title={texts.common.unavailable.title}>
      <Notice kind="fault" word={texts.common.faultWord} isUrgent>
        {message}
      </Notice>
      <p>{texts.common.unavailable.next}</p>
    </ReadyToReload>
  );
}

/** Why nothing is shown, and the way to open the page anew. */
function ReadyToReload({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <div className={styles.message}>
      <h1>{title}</h1>
      {children}
      <p className={styles.actions}>
        <Button look="primary" onPress={() => window.location.reload()}>
          {texts.common.unavailable.again}
        </Button>
      </p>
    </div>
  );
}
