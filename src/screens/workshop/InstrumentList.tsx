import { noteCount } from '../../piano/compass.ts';
import { formatDate, formatHumidity, formatNoteRange } from '../../piano/format.ts';
import { DemonstrationMark } from '../../ui/DemonstrationMark.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { texts } from '../../ui/texts.ts';
import type { InstrumentSummary } from './useWorkshop.ts';
import styles from './workshop.module.css';

const words = texts.workshop;

export function InstrumentList({ summaries }: { readonly summaries: readonly InstrumentSummary[] }) {
  return (
    <ul className={styles.list} aria-label={words.instruments}>
      {summaries.map((summary) => (
        <InstrumentRow key={summary.instrument.id} summary={summary} />
      ))}
    </ul>
  );
}

function InstrumentRow({ summary: { instrument, lastVisit, visitCount } }: { readonly summary: InstrumentSummary }) {
  const { compass } = instrument;
  const built = instrument.builtYear === null ? '' : `, ${texts.instrument.facts.built(instrument.builtYear)}`;
  return (
    <li className={styles.row}>
      <div className={styles.name}>
        <h2>
          <a className={styles.open} href={routeToHref({ screen: 'instrument', instrumentId: instrument.id })}>
            {instrument.name}
          </a>
        </h2>
        <p className={styles.kind}>
          {words.kinds[instrument.kind]}
          {built} {instrument.isDemonstration && <DemonstrationMark />}
        </p>
      </div>
      <dl className={styles.facts}>
        <RowFact label={words.columns.compass}>
          {formatNoteRange(compass.lowestMidi, compass.highestMidi)} ({noteCount(compass)})
        </RowFact>
        <RowFact label={words.columns.lastVisit}>{lastVisit ? formatDate(lastVisit.visitedOn) : words.noVisit}</RowFact>
        <RowFact label={words.columns.humidity}>{formatHumidity(lastVisit?.humidityPct ?? null)}</RowFact>
        <RowFact label={words.columns.visits}>{words.visitCount(visitCount)}</RowFact>
      </dl>
    </li>
  );
}

function RowFact({ label, children }: { readonly label: string; readonly children: React.ReactNode }) {
  return (
    <div>
      <dt>{label}</dt>
      <dd>{children}</dd>
    </div>
  );
}
