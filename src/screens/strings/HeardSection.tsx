import { useState } from 'react';
import { formatDate, formatLevel, formatNumber } from '../../piano/format.ts';
import type { TakeId } from '../../piano/ids.ts';
import type { NoteReading } from '../../piano/reading.ts';
import type { Records } from '../../records/records.ts';
import type { BeatingPartial } from '../../stringing/falseBeats/falseBeatList.ts';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { FieldRow } from '../../ui/FormPage.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { usePlayback } from '../../ui/usePlayback.ts';
import { unpackSound } from '../../workers/unpackSound.ts';
import { heardString } from './audibility.ts';
import { BeatSign } from './BeatSign.tsx';
import { EnvelopeFigure } from './EnvelopeFigure.tsx';
import type { StringTake } from './stringReadings.ts';
import styles from './strings.module.css';
import { useStoredSound } from './useStoredSound.ts';

const words = texts.strings.string;

const COLUMNS: readonly Column<BeatingPartial>[] = [
  { key: 'partial', title: words.partial, isRowHeader: true, cell: ({ partialNumber }) => partialNumber },
  { key: 'rate', title: words.rate, isNumber: true, cell: ({ rateHz }) => formatNumber(rateHz, rateHz < 10 ? 2 : 1) },
  {
    key: 'uncertainty',
    title: words.rateUncertainty,
    isNumber: true,
    cell: ({ rateStandardUncertaintyHz }) => `± ${formatNumber(rateStandardUncertaintyHz, 2)}`,
  },
  { key: 'depth', title: words.depth, isNumber: true, cell: ({ depthDb }) => formatLevel(depthDb) },
  { key: 'level', title: words.level, isNumber: true, cell: ({ levelDb }) => formatLevel(levelDb) },
];

type Props = {
  readonly records: Records;
  /** Of this string, the oldest first. */
  readonly takes: readonly StringTake[];
  readonly withSound: ReadonlySet<TakeId>;
};

/** What one recording of the string says: its false beat in figures, as a picture and as sound. */
export function HeardSection({ records, takes, withSound }: Props) {
  const [takeId, setTakeId] = useState<TakeId | null>(null);
  const shown =
    takes.find(({ take }) => take.id === takeId) ?? takes.findLast(({ take }) => take.isKept) ?? takes.at(-1);
  return (
    <Section title={words.now}>
      {!shown ? (
        <p>{words.noReading}</p>
      ) : (
        <>
          <SelectField
            id="string-take"
            label={words.recording}
            value={shown.take.id as string}
            choices={[...takes].reverse().map(({ take, survey, visit }) => ({
              value: take.id as string,
              label: words.takeChoice(
                `${formatDate(visit.visitedOn)} ${timeOf(take.recordedAt)}`,
                texts.common.stage[survey.stage],
                take.isKept,
                withSound.has(take.id),
              ),
            }))}
            onChange={(value) => setTakeId(value as TakeId)}
          />
          <BeatFigures reading={shown.take.reading} />
          <TakeSoundView key={shown.take.id} records={records} shown={shown} />
          <p>
            <a href={routeToHref({ screen: 'take', takeId: shown.take.id })}>{words.openTake}</a>
          </p>
        </>
      )}
    </Section>
  );
}

/** Hours and minutes where the recording was made known by them. */
export function timeOf(isoTime: string): string {
  return new Date(isoTime).toTimeString().slice(0, 5);
}

function BeatFigures({ reading }: { readonly reading: NoteReading }) {
  const { audibility, falseBeat } = heardString(reading);
  return (
    <>
      <p>
        <BeatSign audibility={audibility} /> {texts.strings.audible[audibility]}.{' '}
        {falseBeat
          ? texts.strings.patterns[falseBeat.pattern]
          : words.noBeats[audibility === 'none' ? 'none' : 'undecided']}
      </p>
      {falseBeat && (
        <DataTable
          caption={words.partialsCaption}
          columns={COLUMNS}
          rows={falseBeat.partials}
          rowKey={({ partialNumber }) => String(partialNumber)}
        />
      )}
    </>
  );
}

function TakeSoundView({ records, shown: { take } }: { readonly records: Records; readonly shown: StringTake }) {
  const stored = useStoredSound(records, take.id);
  const playback = usePlayback(unpackSound);
  if (stored.state !== 'ready') return <ReadState observed={stored} />;
  const sound = stored.value;
  if (!sound) return <p className={styles.soft}>{words.noSound}</p>;
  return (
    <>
      <FieldRow>
        <Button onPress={() => (playback.isPlaying ? playback.stop() : void playback.play(sound))}>
          {playback.isPlaying ? words.stop : words.play}
        </Button>
      </FieldRow>
      <p role="status">{playback.fault && words.unplayable(playback.fault)}</p>
      <EnvelopeFigure reading={take.reading} stored={sound} />
    </>
  );
}
