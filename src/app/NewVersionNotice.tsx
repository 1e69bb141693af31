import { useState, useSyncExternalStore } from 'react';
import { Button } from '../ui/Button.tsx';
import type { Route } from '../ui/routes.ts';
import { texts } from '../ui/texts.ts';
import { underWayOn } from './busyScreens.ts';
import styles from './NewVersionNotice.module.css';
import { loadNewVersion, onWaitingVersion, waitingVersion } from './newVersion.ts';

const words = texts.common.newVersion;

/** A quiet line above the page. Nothing is loaded before the user asks for it. */
export function NewVersionNotice({ route }: { readonly route: Route }) {
  const version = useSyncExternalStore(onWaitingVersion, waitingVersion);
  const [putAway, setPutAway] = useState<ServiceWorker | null>(null);
  const isShown = version !== null && version !== putAway && underWayOn(route.screen) === 'nothing';
  return (
    <div role="status">
      {isShown && (
        <p className={styles.line}>
          <span>{words.ready}</span>
          <Button onPress={loadNewVersion}>{words.load}</Button>
          <Button look="quiet" onPress={() => setPutAway(version)}>
            {words.later}
          </Button>
        </p>
      )}
    </div>
  );
}
