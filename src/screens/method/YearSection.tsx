import { formatDate, formatNoteRange, formatNotes } from '../../piano/format.ts';
import { LegendSymbol } from '../../ui/ChartSymbol.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { FAILING, type InventedYears, judgeInventedYears } from './inventedYears.ts';
import { LegendLine } from './LegendLine.tsx';
import styles from './method.module.css';
import { PictureFigure } from './PictureFigure.tsx';
import { PictureWait } from './PictureWait.tsx';
import { centsAxis, notesAxis } from './plotAxes.ts';
import { useWorkedOut } from './useWorkedOut.ts';

const words = texts.method.year;

/** One interval split into what the weather did and what is left. */
export function YearSection() {
  const years = useWorkedOut(judgeInventedYears);
  return (
    <Section title={words.title}>
      <p className={styles.text}>{words.what}</p>
      {years.state === 'ready' ? <YearPictures years={years.value} /> : <PictureWait of={years} />}
    </Section>
  );
}

function YearPictures({ years: { parts, from, to, namedMidis, wrongCount } }: { readonly years: InventedYears }) {
  const dates = [formatDate(from), formatDate(to)] as const;
  const own = parts.map(({ midi, ownCents, standardUncertaintyCents: sigma }) => ({
    x: midi,
    y: ownCents,
    low: ownCents - 2 * sigma,
    high: ownCents + 2 * sigma,
  }));
  const isNamed = ({ x }: { readonly x: number }) => namedMidis.includes(x);
  const midis = parts.map(({ midi }) => midi);
  const x = { ...notesAxis(Math.min(...midis), Math.max(...midis)), title: texts.method.axis.note };
  const readAxis = centsAxis(parts.flatMap(({ cents, wholeCents }) => [cents, wholeCents]));
  // Larger, or a cent would not show; the title says so.
  const leftAxis = centsAxis(own.flatMap(({ low, high }) => [low, high]));
  return (
    <>
      <PictureFigure
        title={words.read(...dates)}
        unit={texts.method.axis.cents}
        legend={[
          { sign: <LegendSymbol shape="ring" />, meaning: words.legend.reading },
          { sign: <LegendLine look="fitted" />, meaning: words.legend.whole },
        ]}
        plot={{
          summary: words.summaryRead(parts.length, ...dates),
          x,
          y: readAxis,
          layers: [
            { kind: 'signs', shape: 'ring', points: parts.map(({ midi, cents }) => ({ x: midi, y: cents })) },
            { kind: 'line', look: 'fitted', points: parts.map(({ midi, wholeCents }) => ({ x: midi, y: wholeCents })) },
          ],
        }}
      />
      <PictureFigure
        title={words.left}
        unit={texts.method.axis.cents}
        legend={[
          { sign: <LegendSymbol shape="ring" />, meaning: words.legend.own },
          { sign: <LegendSymbol shape="triangle" />, meaning: words.legend.named },
        ]}
        plot={{
          summary: words.summaryLeft(namedMidis.length),
          x,
          y: leftAxis,
          layers: [
            { kind: 'signs', shape: 'ring', points: own.filter((point) => !isNamed(point)) },
            { kind: 'signs', shape: 'triangle', points: own.filter(isNamed) },
          ],
        }}
      />
      <p className={styles.text}>
        {words.truth(
          formatNoteRange(FAILING.fromMidi, FAILING.toMidi),
          namedMidis.length === 0 ? words.none : formatNotes(namedMidis),
          namedMidis.length,
          wrongCount,
        )}
      </p>
    </>
  );
}
