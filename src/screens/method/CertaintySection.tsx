import { formatNumber, formatShare, formatSigned, NOT_MEASURED } from '../../piano/format.ts';
import { shareWithin, spreadOfErrors } from '../../survey/certaintyTrial.ts';
import { FactList } from '../../ui/FactList.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { LegendColumn, LegendLine } from './LegendLine.tsx';
import styles from './method.module.css';
import { PictureFigure } from './PictureFigure.tsx';
import { PictureWait } from './PictureWait.tsx';
import { steppedAxis } from './plotAxes.ts';
import { SOUND_COUNT, useCertainty } from './useCertainty.ts';

const words = texts.method.certainty;
/** Of the normal distribution. */
const NORMAL_WITHIN = { 1: 0.683, 2: 0.954 };
const HIGHEST_SHARE = 0.3;

/** Whether stated uncertainties hold: measured here and now, on sounds whose truth is known. */
export function CertaintySection() {
  const { doneCount, errors, fault } = useCertainty();
  const bins = spreadOfErrors(errors);
  const within = (sigmas: 1 | 2) => {
    const share = shareWithin(errors, sigmas);
    return share === null ? NOT_MEASURED : formatShare(share);
  };
  return (
    <Section title={words.title}>
      <p className={styles.text}>{words.what}</p>
      {fault !== null && <PictureWait of={{ state: 'failed', detail: fault }} />}
      <PictureFigure
        title={words.picture}
        unit={texts.method.axis.share}
        legend={[
          { sign: <LegendColumn />, meaning: words.legend.errors },
          { sign: <LegendLine look="expected" />, meaning: words.legend.normal },
        ]}
        plot={{
          summary: words.summary(within(1), within(2)),
          x: {
            ...steppedAxis(-4, 4, 1, (value) => (value === 0 ? '0' : formatSigned(value, 0))),
            title: texts.method.axis.errors,
          },
          y: steppedAxis(0, HIGHEST_SHARE, 0.1, (share) => (share === 0 ? '0' : formatShare(share))),
          layers: [
            { kind: 'columns', columns: bins.map(({ from, to, share }) => ({ from, to, y: share })) },
            {
              kind: 'line',
              look: 'expected',
              points: bins.map(({ from, to, normalShare }) => ({ x: (from + to) / 2, y: normalShare })),
            },
          ],
        }}
      />
      <p role="status" className={styles.small}>
        {words.progress(doneCount, SOUND_COUNT)}
      </p>
      <FactList
        facts={[
          { label: words.count, value: formatNumber(errors.length, 0) },
          ...([1, 2] as const).map((sigmas) => ({
            label: words.within(sigmas),
            value: words.withinValue(within(sigmas), formatShare(NORMAL_WITHIN[sigmas])),
          })),
        ]}
      />
      <p className={styles.small}>{words.limits}</p>
    </Section>
  );
}
