import { formatDate } from '../piano/format.ts';
import type { BackupAge } from '../records/backupAge.ts';
import type { Records } from '../records/records.ts';
import { RoomNotice } from '../screens/records/RoomNotice.tsx';
import { Button, LinkButton } from '../ui/Button.tsx';
import { type Route, routeToHref } from '../ui/routes.ts';
import { texts } from '../ui/texts.ts';
import styles from './NewVersionNotice.module.css';
import { useCare } from './useCare.ts';

const words = texts.records.care;

/** Quiet lines above the page: that a backup is due, that room is getting scarce. */
export function CareNotice({ route, records }: { readonly route: Route; readonly records: Records }) {
  const { backup, storage, rivalCount, putOff } = useCare(records, route);
  const href = routeToHref({ screen: 'records' });
  return (
    <div role="status">
      {storage && (
        <RoomNotice status={storage}>
          <a href={href}>{texts.records.storage.open}</a>
        </RoomNotice>
      )}
      {rivalCount > 0 && (
        <p className={styles.line}>
          <span>{texts.records.rivals.what(rivalCount)}</span>
          <LinkButton href={href}>{texts.records.rivals.open}</LinkButton>
        </p>
      )}
      {backup && (
        <p className={styles.line}>
          <span>
            <strong>{words.backup}.</strong> {dueText(backup)}
          </span>
          <LinkButton href={href}>{words.make}</LinkButton>
          <Button look="quiet" onPress={() => void putOff()}>
            {words.later}
          </Button>
        </p>
      )}
    </div>
  );
}

function dueText({ lastAt, surveysSince }: BackupAge): string {
  return lastAt === null ? words.none(surveysSince) : words.due(surveysSince, formatDate(lastAt));
}
