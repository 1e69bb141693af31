import type { SpectrumPoint } from '../../analysis/signal/levelSpectrum.ts';
import { partialHz } from '../../analysis/tone/typicalInharmonicity.ts';
import { formatCents, formatHz, formatInharmonicity, formatNote, formatNumber } from '../../piano/format.ts';
import { LegendSymbol } from '../../ui/ChartSymbol.tsx';
import { FactList } from '../../ui/FactList.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { sharedTakeWorker } from '../../workers/sharedTakeWorker.ts';
import { LegendLine } from './LegendLine.tsx';
import styles from './method.module.css';
import { PictureFigure } from './PictureFigure.tsx';
import { PictureWait } from './PictureWait.tsx';
import { levelAxis, steppedAxis } from './plotAxes.ts';
import { measureSample, type SampleNote } from './sampleNotes.ts';
import { useWorkedOut } from './useWorkedOut.ts';

const words = texts.method.note;
const DEEPEST_DB = -100;
const POINT_COUNT = 420;

type Drawn = { readonly note: SampleNote; readonly highestHz: number; readonly spectrum: readonly SpectrumPoint[] };

async function measureA4(): Promise<Drawn> {
  const note = await measureSample('a4');
  const { samples, sampleRateHz, onsetIndex, reading } = note;
  const highestHz = 1000 * Math.ceil((1.05 * (reading.partials.at(-1)?.frequencyHz ?? reading.partial1Hz)) / 1000);
  const request = { startIndex: onsetIndex, durationS: 0.7, highestHz, pointCount: POINT_COUNT };
  const spectrum = await sharedTakeWorker().ask({ kind: 'spectrum', samples, sampleRateHz, request });
  return { note, highestHz, spectrum };
}

/** A spectrum with what was found in it, and where a string without stiffness would have its partials. */
export function NoteSection() {
  const note = useWorkedOut(measureA4);
  return (
    <Section title={words.title}>
      <p className={styles.text}>{words.what}</p>
      {note.state === 'ready' ? <NotePicture {...note.value} /> : <PictureWait of={note} />}
    </Section>
  );
}

function NotePicture({ note: { reading, truth }, highestHz, spectrum }: Drawn) {
  const { partials, partial1Hz, f0Hz, inharmonicityB } = reading;
  const name = formatNote(reading.midi);
  const line = spectrum.map(({ frequencyHz, levelDb }) => ({ x: frequencyHz, y: levelDb }));
  const peakNear = (hz: number) =>
    Math.max(...line.filter(({ x }) => Math.abs(x - hz) < partial1Hz / 4).map(({ y }) => y));
  const numbers = partials.map(({ partialNumber }) => partialNumber);
  const stiff = f0Hz === null || inharmonicityB === null ? [] : numbers.map((n) => partialHz(f0Hz, inharmonicityB, n));
  return (
    <>
      <PictureFigure
        title={words.picture(name)}
        unit={texts.method.axis.level}
        legend={[
          { sign: <LegendLine look="measured" />, meaning: words.legend.spectrum },
          { sign: <LegendSymbol shape="disc" />, meaning: words.legend.partial },
          { sign: <LegendLine look="fitted" />, meaning: words.legend.fitted },
          { sign: <LegendLine look="expected" />, meaning: words.legend.even },
        ]}
        plot={{
          summary: words.summary(name, partials.length),
          x: { ...steppedAxis(0, highestHz, 2000, (hz) => formatNumber(hz, 0)), title: texts.method.axis.frequency },
          y: levelAxis(
            line.map(({ y }) => y),
            DEEPEST_DB,
          ),
          layers: [
            { kind: 'strokes', row: 0, look: 'fitted', at: stiff },
            { kind: 'strokes', row: 1, look: 'expected', at: numbers.map((n) => n * partial1Hz) },
            { kind: 'line', look: 'measured', points: line },
            {
              kind: 'signs',
              shape: 'disc',
              points: partials.map(({ frequencyHz }) => ({ x: frequencyHz, y: peakNear(frequencyHz) })),
            },
          ],
        }}
      />
      <FactList
        facts={[
          { label: words.partial1, value: formatHz(partial1Hz, reading.partial1StandardUncertaintyHz) },
          { label: words.pitch, value: formatCents(reading.offsetCents, reading.offsetStandardUncertaintyCents) },
          {
            label: words.inharmonicity,
            value: formatInharmonicity(inharmonicityB, reading.inharmonicityBStandardUncertainty),
          },
          { label: words.truth, value: words.truthValue(formatCents(truth.cents)) },
        ]}
      />
    </>
  );
}
