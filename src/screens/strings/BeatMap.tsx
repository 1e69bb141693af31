import { useRef } from 'react';
import type { InstrumentId } from '../../piano/ids.ts';
import type { Instrument } from '../../piano/instrument.ts';
import { midiToName } from '../../piano/note.ts';
import { breaksAfter } from '../../piano/surveyScope.ts';
import { ChartFigure } from '../../ui/charts/ChartFigure.tsx';
import { useWidth } from '../../ui/charts/useWidth.ts';
import { texts } from '../../ui/texts.ts';
import { type Audibility, BEATING } from './audibility.ts';
import styles from './BeatMap.module.css';
import { BeatShape, BeatSign } from './BeatSign.tsx';
import { beatMapLayout, MAP_LEFT, type MapBlock } from './beatMap.ts';
import { beatText, type DeskRow } from './deskRows.ts';
import { hrefOf } from './stringKey.ts';

const words = texts.strings.map;
const SHOWN: readonly Audibility[] = ['plain', 'faint', 'hardly', 'none', 'undecided'];

type Props = { readonly instrument: Instrument; readonly rows: readonly DeskRow[] };

/** Every recorded string as a sign; a press opens the string. The list of decisions says the same for the keyboard. */
export function BeatMap({ instrument, rows }: Props) {
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame);
  const recorded = rows.filter(({ audibility }) => audibility !== 'missing');
  const beating = recorded.filter(({ audibility }) => BEATING.includes(audibility));
  const { height, blocks } = beatMapLayout(recorded, instrument.compass, breaksAfter(instrument), width);
  const used = SHOWN.filter((audibility) => recorded.some((row) => row.audibility === audibility));
  return (
    <ChartFigure
      name={words.chart}
      title={words.axisTitle}
      legend={used.map((audibility) => ({
        key: audibility,
        sign: <BeatSign audibility={audibility} />,
        meaning: texts.strings.audible[audibility],
      }))}
      sheet={() => mapSheet(recorded)}
    >
      <div ref={frame} className={styles.frame}>
        {width > 0 && (
          // biome-ignore lint/a11y/useSemanticElements: a drawing with links in it is a group, and no fieldset
          <svg
            width={width}
            height={height}
            viewBox={`0 0 ${width} ${height}`}
            role="group"
            aria-label={words.summary(beating.length, recorded.length)}
          >
            {blocks.map((block) => (
              <Block key={block.key} block={block} instrumentId={instrument.id} />
            ))}
          </svg>
        )}
      </div>
    </ChartFigure>
  );
}

type BlockProps = { readonly block: MapBlock; readonly instrumentId: InstrumentId };

function Block({ block, instrumentId }: BlockProps) {
  const { stringY, endX, ticks, breaks, cells } = block;
  const bottom = (stringY[2] ?? 0) + 11;
  return (
    <g>
      {stringY.map((y, index) => (
        <g key={y}>
          <path className={styles.line} d={`M${MAP_LEFT} ${y}H${endX}`} />
          <text className={styles.rowName} x={MAP_LEFT - 8} y={y + 4}>
            {words.rows[index + 1]}
          </text>
        </g>
      ))}
      {breaks.map((x) => (
        <path key={x} className={styles.break} d={`M${x} ${block.top}V${bottom}`} />
      ))}
      {ticks.map(({ x, label }) => (
        <text key={label} className={styles.tick} x={x} y={bottom + 14}>
          {label}
        </text>
      ))}
      {cells.map(({ row, x, y }) => (
        <a key={row.key} href={hrefOf(instrumentId, row.place)} tabIndex={-1}>
          <title>{`${row.name}: ${beatText(row.audibility, row.falseBeat)}`}</title>
          <rect className={styles.target} x={x - 5.5} y={y - 11} width={11} height={22} />
          <BeatShape audibility={row.audibility} x={x} y={y} size={9} />
        </a>
      ))}
    </g>
  );
}

function mapSheet(rows: readonly DeskRow[]) {
  return {
    columns: ['note', 'midi', 'string', 'false_beat', 'weight', 'partial', 'rate_hz', 'depth_db'],
    rows: rows.map(({ place: { midi, stringPosition }, audibility, falseBeat }) => {
      const [heaviest] = falseBeat?.partials ?? [];
      const beat = [heaviest?.partialNumber ?? null, heaviest?.rateHz ?? null, heaviest?.depthDb ?? null];
      return [midiToName(midi), midi, stringPosition, audibility, falseBeat?.weight ?? null, ...beat];
    }),
  };
}
