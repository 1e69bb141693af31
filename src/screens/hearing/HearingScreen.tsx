import { formatNote } from '../../piano/format.ts';
import type { InstrumentId } from '../../piano/ids.ts';
import type { Instrument } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { FieldRow } from '../../ui/FormPage.tsx';
import { NotFound } from '../../ui/NotFound.tsx';
import { PageHeading } from '../../ui/PageHeading.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { instrumentTrail } from '../../ui/trails.ts';
import { soundName } from './comparison.ts';
import type { HearableString } from './hearableNotes.ts';
import { ListenSection } from './ListenSection.tsx';
import { useHearableStrings, usePairChoice } from './useHearing.ts';

const words = texts.hearing;

type Props = { readonly records: Records; readonly instrumentId: InstrumentId };

export function HearingScreen({ records, instrumentId }: Props) {
  const page = useHearableStrings(records, instrumentId);
  if (page.state !== 'ready') return <ReadState observed={page} />;
  if (!page.value) return <NotFound />;
  const { instrument, strings } = page.value;
  return (
    <>
      <PageHeading
        title={words.title}
        trail={instrumentTrail(instrument)}
        subtitle={words.subtitle}
        isInvented={instrument.isDemonstration}
      />
      {strings.length === 0 ? (
        <EmptyState>
          <p>{words.empty}</p>
        </EmptyState>
      ) : (
        <PairSections records={records} instrument={instrument} strings={strings} />
      )}
    </>
  );
}

type PairProps = {
  readonly records: Records;
  readonly instrument: Instrument;
  readonly strings: readonly HearableString[];
};

function PairSections({ records, instrument, strings }: PairProps) {
  const { choice, chooseString, chooseFirst, chooseSecond } = usePairChoice(strings);
  if (!choice) return null;
  const { string, first, second } = choice;
  const sounds = string.sounds.map((sound) => ({ value: sound.take.id as string, label: soundName(sound) }));
  return (
    <>
      <Section title={words.choice.title} note={words.choice.note}>
        <SelectField
          id="hear-note"
          label={words.note}
          value={string.key}
          choices={strings.map((one) => ({ value: one.key, label: labelOf(one) }))}
          onChange={chooseString}
        />
        <FieldRow>
          <SelectField
            id="hear-first"
            label={words.first}
            value={first.take.id}
            choices={sounds}
            onChange={chooseFirst}
          />
          <SelectField
            id="hear-second"
            label={words.second}
            value={second.take.id}
            choices={sounds}
            onChange={chooseSecond}
          />
        </FieldRow>
      </Section>
      <ListenSection
        key={`${first.take.id} ${second.take.id}`}
        records={records}
        instrument={instrument}
        first={first}
        second={second}
      />
    </>
  );
}

function labelOf({ midi, stringPosition, sounds }: HearableString): string {
  const string = stringPosition === 0 ? '' : (texts.common.stringPosition[stringPosition] ?? '');
  return words.noteChoice(formatNote(midi), string, sounds.length);
}
