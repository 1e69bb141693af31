import { useMemo, useRef, useState } from 'react';
import { partialEnvelope } from '../../analysis/signal/partialEnvelope.ts';
import { formatBeatRate, formatLevel } from '../../piano/format.ts';
import type { TakeSound } from '../../piano/instrument.ts';
import type { NoteReading, PartialReading } from '../../piano/reading.ts';
import { deepestBeat } from '../../stringing/falseBeats/beatStrength.ts';
import { falseBeatOf } from '../../stringing/falseBeats/falseBeatList.ts';
import { ChartFigure } from '../../ui/charts/ChartFigure.tsx';
import { useWidth } from '../../ui/charts/useWidth.ts';
import { SelectField } from '../../ui/Field.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './EnvelopeFigure.module.css';
import { ENVELOPE_HEIGHT, envelopeDrawing } from './envelopeScale.ts';
import { nameOf } from './stringKey.ts';
import { useUnpackedSound } from './useStoredSound.ts';

const words = texts.strings.string.envelope;

type Props = { readonly reading: NoteReading; readonly stored: TakeSound };

/** How loud one partial is from moment to moment: beats show as waves. The most audible beat first. */
export function EnvelopeFigure({ reading, stored }: Props) {
  const unpacked = useUnpackedSound(stored);
  const [chosen, setChosen] = useState<number | null>(null);
  const heaviest = falseBeatOf(reading)?.partials[0]?.partialNumber;
  const partial =
    reading.partials.find(({ partialNumber }) => partialNumber === (chosen ?? heaviest)) ?? reading.partials[0];
  if (unpacked.state === 'preparing') return <p role="status">{words.preparing}</p>;
  if (unpacked.state === 'failed') return <p role="status">{texts.strings.string.unplayable(unpacked.detail)}</p>;
  if (!partial) return null;
  return (
    <>
      <SelectField
        id="envelope-partial"
        label={words.partial}
        value={String(partial.partialNumber)}
        choices={reading.partials.map((one) => ({
          value: String(one.partialNumber),
          label: words.choice(one.partialNumber, one.beats.length > 0),
        }))}
        onChange={(value) => setChosen(Number(value))}
      />
      <Drawing reading={reading} partial={partial} sound={unpacked.sound} />
    </>
  );
}

type DrawingProps = {
  readonly reading: NoteReading;
  readonly partial: PartialReading;
  readonly sound: Parameters<typeof partialEnvelope>[0];
};

function Drawing({ reading, partial, sound }: DrawingProps) {
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame);
  const { partialNumber, frequencyHz } = partial;
  const spacingHz = reading.f0Hz ?? reading.partial1Hz;
  const points = useMemo(
    () => partialEnvelope(sound, { centreHz: frequencyHz, spacingHz }),
    [sound, frequencyHz, spacingHz],
  );
  const { path, timeTicks, levelTicks, left, right, top, bottom } = envelopeDrawing(points, width);
  const beat = deepestBeat(partial);
  const beats = beat ? words.beats(formatBeatRate(beat.rateHz), formatLevel(beat.depthDb)) : words.noBeats;
  return (
    <ChartFigure
      name={words.chart(nameOf(reading), partialNumber)}
      title={words.title(partialNumber)}
      sheet={() => ({ columns: ['time_s', 'level_db'], rows: points.map(({ timeS, levelDb }) => [timeS, levelDb]) })}
    >
      <div ref={frame} className={styles.frame}>
        {width > 0 && (
          <svg
            width={width}
            height={ENVELOPE_HEIGHT}
            viewBox={`0 0 ${width} ${ENVELOPE_HEIGHT}`}
            role="img"
            aria-label={words.summary(partialNumber, beats)}
          >
            {levelTicks.map(({ at, label }) => (
              <g key={label}>
                <path className={styles.rule} d={`M${left} ${at}H${right}`} />
                <text className={styles.level} x={left - 6} y={at + 4}>
                  {label}
                </text>
              </g>
            ))}
            {timeTicks.map(({ at, label }) => (
              <g key={label}>
                <path className={styles.rule} d={`M${at} ${top}V${bottom + 4}`} />
                <text className={styles.time} x={at} y={bottom + 18}>
                  {label}
                </text>
              </g>
            ))}
            <path className={styles.envelope} d={path} />
          </svg>
        )}
      </div>
      <p className={styles.beats}>{beats}</p>
    </ChartFigure>
  );
}
