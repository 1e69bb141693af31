import type { MicrophoneSetting } from '../capture/microphoneSettings.ts';
import { Button } from '../ui/Button.tsx';
import { Notice } from '../ui/Notice.tsx';
import { routeToHref } from '../ui/routes.ts';
import { texts } from '../ui/texts.ts';
import styles from './SourceNotice.module.css';
import type { Source } from './source.ts';

const words = texts.recording;

type SourceNoticeProps = {
  readonly source: Source;
  readonly takeCount: number;
  readonly onStart: () => void;
  readonly onResume: () => void;
};

/** What to do about the microphone, if anything. */
export function SourceNotice({ source, takeCount, onStart, onResume }: SourceNoticeProps) {
  const safe = takeCount > 0 ? words.takesSafe(takeCount) : '';
  switch (source.state) {
    case 'listening':
      return null;
    case 'off':
      return (
        <Offer label={takeCount > 0 ? words.resume : words.start} onPress={onStart}>
          {safe} {words.startHint} <a href={routeToHref({ screen: 'microphone-clock' })}>{texts.clock.checkLink}</a>
        </Offer>
      );
    case 'asking':
      return <p role="status">{words.asking}</p>;
    case 'paused':
      return (
        <Offer label={words.resume} onPress={onResume}>
          {words.paused} {safe}
        </Offer>
      );
    case 'refused':
      return (
        <Fault label={words.again} onPress={onStart} detail={source.detail}>
          {words.faults[source.reason]} {safe}
        </Fault>
      );
    case 'lost':
      return (
        <Fault label={words.resume} onPress={source.mayReturn ? onResume : onStart}>
          {words.lost[source.reason]} {safe}
        </Fault>
      );
    case 'broken':
      return (
        <Fault label={words.resume} onPress={onStart} detail={source.detail}>
          {words.programFault} {safe}
        </Fault>
      );
  }
}

type OfferProps = { readonly label: string; readonly onPress: () => void; readonly children: React.ReactNode };

function Offer({ label, onPress, children }: OfferProps) {
  return (
    <div className={styles.offer}>
      <Button look="primary" isLarge onPress={onPress}>
        {label}
      </Button>
      <p>{children}</p>
    </div>
  );
}

function Fault({ label, onPress, children, detail }: OfferProps & { readonly detail?: string }) {
  return (
    <Notice kind="fault" word={words.noSound} isUrgent>
      {children}
      {detail && <p className={styles.detail}>{detail}</p>}
      <p className={styles.faultAction}>
        <Button look="primary" isLarge onPress={onPress}>
          {label}
        </Button>
      </p>
    </Notice>
  );
}

/** Processing meant for speech that the browser left on. More channels than asked for do no harm. */
export function ProcessingNotice({ settings }: { readonly settings: readonly MicrophoneSetting[] }) {
  const harmful = settings.filter((setting) => setting !== 'channelCount');
  if (harmful.length === 0) return null;
  return (
    <Notice kind="caution" word={texts.common.cautionWord}>
      {words.processing(harmful.map((setting) => words.settings[setting]).join(', '))}
    </Notice>
  );
}
