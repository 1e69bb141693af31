import { useState, useSyncExternalStore } from 'react';
import { Button } from '../ui/Button.tsx';
import type { Route } from '../ui/routes.ts';
import { texts } from '../ui/texts.ts';
import styles from './NewVersionNotice.module.css';
import { loadNewVersion, onWaitingVersion, waitingVersion } from './newVersion.ts';

const words = texts.common.newVersion;

/** Screens on which something is under way that loading the page anew would break off. */
const BUSY: readonly Route['screen'][] = [
  'recording',
  'microphone-clock',
  'new-instrument',
  'edit-instrument',
  'new-visit',
  'edit-visit',
];

/** A quiet line above the page. Nothing is loaded before the user asks for it. */
export function NewVersionNotice({ route }: { readonly route: Route }) {
  const version = useSyncExternalStore(onWaitingVersion, waitingVersion);
  const [putAway, setPutAway] = useState<ServiceWorker | null>(null);
  const isShown = version !== null && version !== putAway && !BUSY.includes(route.screen);
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
