import { useState } from 'react';
import { formatDate, formatNoteRange } from '../../piano/format.ts';
import type { Instrument, InstrumentEvent } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import { Button } from '../../ui/Button.tsx';
import { DeleteButton } from '../../ui/DeleteButton.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { texts } from '../../ui/texts.ts';
import { EventForm } from './EventForm.tsx';
import styles from './instrument.module.css';

const words = texts.instrument.events;

type Props = {
  readonly records: Records;
  readonly instrument: Instrument;
  readonly events: readonly InstrumentEvent[];
};

export function EventSection({ records, instrument, events }: Props) {
  const [isEntering, setEntering] = useState(false);
  return (
    <>
      {events.length === 0 ? (
        <EmptyState>
          <p>{words.empty}</p>
        </EmptyState>
      ) : (
        <ul className={styles.events}>
          {[...events].reverse().map((event) => (
            <EventRow key={event.id} records={records} event={event} />
          ))}
        </ul>
      )}
      {isEntering ? (
        <EventForm records={records} instrument={instrument} onDone={() => setEntering(false)} />
      ) : (
        <Button onPress={() => setEntering(true)}>{words.add}</Button>
      )}
    </>
  );
}

function EventRow({ records, event }: { readonly records: Records; readonly event: InstrumentEvent }) {
  const { fromMidi, toMidi } = event;
  const range = fromMidi === null || toMidi === null ? '' : `, ${formatNoteRange(fromMidi, toMidi)}`;
  const what = `${words.kinds[event.kind]}, ${formatDate(event.happenedOn)}`;
  return (
    <li className={styles.event}>
      <span>{formatDate(event.happenedOn)}</span>
      <div>
        <p>
          {words.kinds[event.kind]}
          {range}
        </p>
        {event.remark !== '' && <p className={styles.eventRemark}>{event.remark}</p>}
      </div>
      <div>
        <DeleteButton
          records={records}
          target={{ table: 'events' as const, id: event.id }}
          message={texts.records.delete.deletedEvent(what)}
          label={texts.records.delete.event(what)}
        >
          {texts.records.delete.word}
        </DeleteButton>
      </div>
    </li>
  );
}
