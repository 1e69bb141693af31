import { useState } from 'react';
import type { InstrumentId } from '../../piano/ids.ts';
import type { Instrument } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import { Button } from '../../ui/Button.tsx';
import { CheckField, CheckGroup } from '../../ui/CheckField.tsx';
import { Disclosure } from '../../ui/Disclosure.tsx';
import { deleteWithUndo } from '../../ui/deleteWithUndo.ts';
import { texts } from '../../ui/texts.ts';
import { useObserved } from '../../ui/useObserved.ts';
import { WriteFault, type WriteFaultValue } from '../../ui/WriteFault.tsx';

const words = texts.records.bin.several;

/** Several instruments at once; nothing where there is only one. */
export function BulkDelete({ records }: { readonly records: Records }) {
  const instruments = useObserved<Instrument[]>('bulk delete', (onValue, onFault) =>
    records.observe(() => records.listInstruments(), onValue, onFault),
  );
  const [chosen, setChosen] = useState<readonly InstrumentId[]>([]);
  const [isBusy, setBusy] = useState(false);
  const [fault, setFault] = useState<WriteFaultValue | null>(null);
  const all = instruments.state === 'ready' ? instruments.value : [];
  if (all.length < 2) return null;
  const toggle = (id: InstrumentId, isIn: boolean) =>
    setChosen((before) => [...before.filter((other) => other !== id), ...(isIn ? [id] : [])]);
  const remove = async () => {
    setBusy(true);
    const targets = chosen.map((id) => ({ table: 'instruments' as const, id }));
    setFault(await deleteWithUndo(records, targets, words.deleted(targets.length)));
    setBusy(false);
    setChosen([]);
  };
  return (
    <Disclosure summary={words.title}>
      <CheckGroup label={words.which}>
        {all.map(({ id, name }) => (
          <CheckField key={id} label={name} isChecked={chosen.includes(id)} onChange={(isIn) => toggle(id, isIn)} />
        ))}
      </CheckGroup>
      <WriteFault fault={fault} />
      <Button isDisabled={isBusy || chosen.length === 0} onPress={() => void remove()}>
        {isBusy ? words.busy : words.action}
      </Button>
    </Disclosure>
  );
}
