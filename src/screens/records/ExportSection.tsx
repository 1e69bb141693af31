import { useState } from 'react';
import type { LeftOut } from '../../files/archive/archiveContents.ts';
import type { InstrumentId } from '../../piano/ids.ts';
import type { Instrument } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import { Button } from '../../ui/Button.tsx';
import { CheckField, CheckGroup } from '../../ui/CheckField.tsx';
import { ChoiceField } from '../../ui/ChoiceField.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { useObserved } from '../../ui/useObserved.ts';
import { downloadSink, fileSink } from './archiveSink.ts';
import { archiveName, type ExportChoice, WHOLE, withPart } from './exportChoice.ts';
import { canChooseFile, chooseFile } from './fileAccess.ts';
import { useArchiveWriting } from './useArchiveWriting.ts';
import { WritingStatus } from './WritingStatus.tsx';

const words = texts.records.export;
const PARTS: readonly LeftOut[] = ['sounds', 'photographs', 'owners', 'visitors'];

export function ExportSection({ records }: { readonly records: Records }) {
  const instruments = useObserved<Instrument[]>('export', (onValue, onFault) =>
    records.observe(() => records.listInstruments(), onValue, onFault),
  );
  const [choice, setChoice] = useState<ExportChoice>(WHOLE);
  const writing = useArchiveWriting(records);
  const all = instruments.state === 'ready' ? instruments.value : [];
  const chosen = all.filter(({ id }) => choice.instrumentIds === null || choice.instrumentIds.includes(id));
  const save = () => {
    const name = archiveName(chosen, new Date(), words.suggested);
    return writing.write(name, choice, async () => {
      if (!canChooseFile()) return downloadSink(name);
      const file = await chooseFile(name, words.fileKind);
      return file && fileSink(file);
    });
  };
  return (
    <Section title={words.title} note={words.note}>
      <WhichInstruments instruments={all} choice={choice} onChoose={setChoice} />
      <CheckGroup label={words.parts}>
        {PARTS.map((part) => (
          <CheckField
            key={part}
            label={words.part[part]}
            isChecked={!choice.leaveOut.includes(part)}
            onChange={(isIn) => setChoice(withPart(choice, part, isIn))}
          />
        ))}
      </CheckGroup>
      {chosen.length === 0 && choice.instrumentIds !== null && <p>{words.none}</p>}
      <Button
        look="primary"
        isDisabled={writing.state.phase === 'writing' || (chosen.length === 0 && choice.instrumentIds !== null)}
        onPress={() => void save()}
      >
        {words.save}
      </Button>
      <WritingStatus writing={writing} />
    </Section>
  );
}

type WhichProps = {
  readonly instruments: readonly Instrument[];
  readonly choice: ExportChoice;
  readonly onChoose: (choice: ExportChoice) => void;
};

function WhichInstruments({ instruments, choice, onChoose }: WhichProps) {
  const { instrumentIds } = choice;
  const toggle = (id: InstrumentId, isIn: boolean) => {
    const others = (instrumentIds ?? []).filter((other) => other !== id);
    onChoose({ ...choice, instrumentIds: isIn ? [...others, id] : others });
  };
  return (
    <>
      <ChoiceField
        name="export-which"
        label={words.which}
        value={instrumentIds === null ? 'all' : 'some'}
        choices={[
          { value: 'all', label: words.all },
          { value: 'some', label: words.some },
        ]}
        onChange={(which) => onChoose({ ...choice, instrumentIds: which === 'all' ? null : [] })}
      />
      {instrumentIds !== null && (
        <CheckGroup label={words.some}>
          {instruments.map(({ id, name }) => (
            <CheckField
              key={id}
              label={name}
              isChecked={instrumentIds.includes(id)}
              onChange={(isIn) => toggle(id, isIn)}
            />
          ))}
        </CheckGroup>
      )}
    </>
  );
}
