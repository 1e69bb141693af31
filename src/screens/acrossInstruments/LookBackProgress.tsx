import { Button } from '../../ui/Button.tsx';
import { Notice } from '../../ui/Notice.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './acrossInstruments.module.css';
import type { Held } from './useHeld.ts';

const words = texts.held.progress;

/** How far the looking back has come, with a way to stop it. It keeps its place when all is judged, so that nothing below it moves. */
export function LookBackProgress({ held }: { readonly held: Held }) {
  const { phase, jobCount, found, failed, now, stop, goOn } = held;
  const doneCount = found.length;
  const ofVisits = now?.kind === 'visit' ? now.doneCount / now.allCount : 0;
  return (
    <>
      {failed.map(({ name, detail }) => (
        <Notice key={`${name} ${detail}`} kind="fault" word={texts.common.faultWord}>
          {words.failed(name, detail)}
        </Notice>
      ))}
      {phase === 'stopped' && (
        <div className={styles.row}>
          <p role="status">{words.stopped}</p>
          <Button onPress={goOn}>{words.goOn}</Button>
        </div>
      )}
      {(phase === 'working' || (phase === 'finished' && jobCount > 0)) && (
        <div className={styles.progress}>
          <progress
            className={styles.bar}
            aria-label={words.title}
            max={Math.max(1, jobCount)}
            value={phase === 'working' ? doneCount + ofVisits : jobCount}
          />
          <div className={styles.row}>
            <p role="status">{words.jobs(doneCount, jobCount)}</p>
            {phase === 'working' && <Button onPress={stop}>{words.stop}</Button>}
          </div>
          <p className={styles.now}>
            {now &&
              (now.kind === 'reading' ? words.reading(now.name) : words.judging(now.name, now.doneCount, now.allCount))}
          </p>
        </div>
      )}
    </>
  );
}
