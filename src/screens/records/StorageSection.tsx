import { formatSize } from '../../piano/formatSize.ts';
import type { Records } from '../../records/records.ts';
import { Button } from '../../ui/Button.tsx';
import { FactList } from '../../ui/FactList.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { RoomNotice } from './RoomNotice.tsx';
import { useStorage } from './useStorage.ts';

const words = texts.records.storage;

export function StorageSection({ records }: { readonly records: Records }) {
  const { status, soundByteCount, wasRefused, ask } = useStorage(records);
  if (!status) return null;
  const { usedBytes, quotaBytes, isPersistent } = status;
  const freeBytes = usedBytes === null || quotaBytes === null ? null : Math.max(0, quotaBytes - usedBytes);
  const facts = [
    { label: words.used, value: sizeText(usedBytes) },
    { label: words.sound, value: sizeText(soundByteCount) },
    { label: words.free, value: sizeText(freeBytes) },
    { label: words.keeping, value: keepingText(isPersistent) },
  ];
  return (
    <Section title={words.title} note={words.note}>
      <RoomNotice status={status} />
      <FactList facts={facts} />
      {isPersistent === false && <Button onPress={() => void ask()}>{words.ask}</Button>}
      <p role="status">{wasRefused && words.refused}</p>
    </Section>
  );
}

function sizeText(byteCount: number | null): string {
  return byteCount === null ? words.unknown : formatSize(byteCount);
}

function keepingText(isPersistent: boolean | null): string {
  if (isPersistent === null) return words.unknown;
  return isPersistent ? words.persistent : words.notPersistent;
}
