import { partialLevels } from '../../analysis/signal/partialEnvelope.ts';
import { skipAfterStrikeS } from '../../analysis/tone/takeBounds.ts';
import { formatBeatRate, formatLevel, formatNote, formatUncertaintyValue } from '../../piano/format.ts';
import type { PartialComponent } from '../../piano/reading.ts';
import { FactList } from '../../ui/FactList.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { LegendLine } from './LegendLine.tsx';
import styles from './method.module.css';
import { PictureFigure } from './PictureFigure.tsx';
import { PictureWait } from './PictureWait.tsx';
import { levelAxis, secondsAxis } from './plotAxes.ts';
import { measureSample, type SampleNote } from './sampleNotes.ts';
import { useWorkedOut } from './useWorkedOut.ts';

const words = texts.method.beat;
const DEEPEST_DB = -80;

const measureC6 = () => measureSample('c6');

/** One partial's level with the tones that were found in it. */
export function BeatSection() {
  const note = useWorkedOut(measureC6);
  return (
    <Section title={words.title}>
      <p className={styles.text}>{words.what}</p>
      {note.state === 'ready' ? <BeatPicture note={note.value} /> : <PictureWait of={note} />}
    </Section>
  );
}

function BeatPicture({ note: { samples, sampleRateHz, onsetIndex, reading, truth } }: { readonly note: SampleNote }) {
  const partial = reading.partials.find(({ beats }) => beats.length > 0);
  const beat = partial?.beats[0];
  if (!partial || !beat) return <PictureWait of={{ state: 'failed', detail: reading.beating.reason }} />;
  const heard = partialLevels(
    { samples, sampleRateHz, onsetIndex },
    { centreHz: partial.frequencyHz, spacingHz: reading.partial1Hz },
  ).map(({ timeS, levelDb }) => ({ x: timeS - onsetIndex / sampleRateHz, y: levelDb }));
  const endS = heard.at(-1)?.x ?? 1;
  const startS = skipAfterStrikeS(reading.partial1Hz);
  const axisEndS = Math.ceil(2 * endS) / 2;
  const known = truth.falseBeats.find(({ partialNumber }) => partialNumber === partial.partialNumber);
  return (
    <>
      <PictureFigure
        title={words.picture(partial.partialNumber, formatNote(reading.midi))}
        unit={texts.method.axis.level}
        legend={[
          { sign: <LegendLine look="measured" />, meaning: words.legend.heard },
          { sign: <LegendLine look="expected" />, meaning: words.legend.tone },
        ]}
        plot={{
          summary: words.summary(partial.partialNumber, formatBeatRate(beat.rateHz)),
          x: { ...secondsAxis(axisEndS), title: texts.method.axis.seconds },
          y: levelAxis(
            heard.map(({ y }) => y),
            DEEPEST_DB,
          ),
          layers: [
            ...partial.components.map((component) => ({
              kind: 'line' as const,
              look: 'expected' as const,
              points: [startS, endS].map((x) => ({ x, y: levelOf(component, x - startS) })),
            })),
            { kind: 'line', look: 'measured', points: heard },
          ],
        }}
      />
      <FactList
        facts={[
          {
            label: words.rate,
            value: words.rateValue(
              formatBeatRate(beat.rateHz),
              formatUncertaintyValue(beat.rateStandardUncertaintyHz, 2),
            ),
          },
          { label: words.depth, value: formatLevel(beat.depthDb) },
          ...(known ? [{ label: words.truth, value: words.truthRate(formatBeatRate(known.splitHz)) }] : []),
        ]}
      />
    </>
  );
}

/** A component falls in a straight line: sixty decibels in its decay time. */
function levelOf({ levelDbfs, decayTimeS }: PartialComponent, afterS: number): number {
  return levelDbfs - (60 * afterS) / decayTimeS;
}
