import { useState } from 'react';
import { formatDate, formatNote } from '../../piano/format.ts';
import type { Photograph } from '../../piano/photograph.ts';
import type { Records } from '../../records/records.ts';
import { Button } from '../../ui/Button.tsx';
import { CheckField } from '../../ui/CheckField.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { FilePicker } from '../../ui/FilePicker.tsx';
import { NotFound } from '../../ui/NotFound.tsx';
import { Notice } from '../../ui/Notice.tsx';
import { PageHeading } from '../../ui/PageHeading.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { instrumentTrail, visitTrail } from '../../ui/trails.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import { PhotographDialog } from './PhotographDialog.tsx';
import { PhotographImage } from './PhotographImage.tsx';
import styles from './photographs.module.css';
import { aboutPhotograph, photographTitle } from './photographWords.ts';
import { type Adding, type PhotographPage, type PhotographSubject, usePhotographs } from './usePhotographs.ts';

const words = texts.photographs;
const ACCEPTED = 'image/*';
/** So many pictures are read at once. */
const PAGE_COUNT = 24;

type Props = { readonly records: Records; readonly subject: PhotographSubject };

export function PhotographsScreen({ records, subject }: Props) {
  const { page, adding, add } = usePhotographs(records, subject);
  if (page.state !== 'ready') return <ReadState observed={page} />;
  if (!page.value) return <NotFound />;
  return (
    <>
      <Heading page={page.value} subject={subject} />
      <Section title={words.add} note={words.note}>
        <AddPhotographs adding={adding} onAdd={(files, keepsFiles) => void add(files, keepsFiles)} />
      </Section>
      <Section title={words.title}>
        <Gallery records={records} page={page.value} />
      </Section>
    </>
  );
}

function Heading({ page, subject }: { readonly page: PhotographPage; readonly subject: PhotographSubject }) {
  const { instrument, visit } = page;
  const trail = visit ? visitTrail(instrument, visit) : instrumentTrail(instrument);
  const visitName = visit && formatDate(visit.visitedOn);
  const title =
    visitName !== null
      ? words.ofVisit(visitName)
      : subject.midi !== undefined
        ? words.ofNote(formatNote(subject.midi))
        : words.ofInstrument;
  return <PageHeading title={title} trail={trail} subtitle={instrument.name} />;
}

type AddProps = { readonly adding: Adding; readonly onAdd: (files: readonly File[], keepsFiles: boolean) => void };

function AddPhotographs({ adding, onAdd }: AddProps) {
  const [keepsFiles, setKeepsFiles] = useState(false);
  const isDisabled = adding.phase === 'adding';
  const add = (files: readonly File[]) => onAdd(files, keepsFiles);
  return (
    <>
      <p className={styles.actions}>
        <FilePicker accept={ACCEPTED} isMultiple look="primary" isDisabled={isDisabled} onPick={add}>
          {words.choose}
        </FilePicker>
        <FilePicker accept={ACCEPTED} usesCamera isDisabled={isDisabled} onPick={add}>
          {words.take}
        </FilePicker>
      </p>
      <CheckField label={words.keepFile} isChecked={keepsFiles} onChange={setKeepsFiles} />
      <p role="status">{addingWords(adding)}</p>
      {adding.phase === 'done' && adding.notPictures.length > 0 && (
        <Notice kind="fault" word={texts.common.faultWord} isUrgent>
          {words.notPictures(adding.notPictures.join(', '))}
        </Notice>
      )}
      <WriteFault fault={adding.phase === 'done' ? adding.fault : null} />
    </>
  );
}

function addingWords(adding: Adding): string {
  if (adding.phase === 'adding') return words.adding(adding.doneCount, adding.allCount);
  return adding.phase === 'done' && adding.addedCount > 0 ? words.added(adding.addedCount) : '';
}

function Gallery({ records, page }: { readonly records: Records; readonly page: PhotographPage }) {
  const [openId, setOpenId] = useState<string | null>(null);
  const [shownCount, setShownCount] = useState(PAGE_COUNT);
  const { photographs, visits } = page;
  if (photographs.length === 0)
    return (
      <EmptyState>
        <p>{words.empty}</p>
      </EmptyState>
    );
  const open = photographs.find(({ id }) => id === openId);
  const hiddenCount = photographs.length - shownCount;
  return (
    <>
      <ul className={styles.grid} aria-label={words.list}>
        {photographs.slice(0, shownCount).map((photograph) => (
          <Item
            key={photograph.id}
            records={records}
            photograph={photograph}
            about={aboutPhotograph(photograph, visits)}
            onOpen={() => setOpenId(photograph.id)}
          />
        ))}
      </ul>
      {hiddenCount > 0 && (
        <Button onPress={() => setShownCount(shownCount + PAGE_COUNT)}>
          {words.more(Math.min(hiddenCount, PAGE_COUNT))}
        </Button>
      )}
      {open && <PhotographDialog records={records} page={page} photograph={open} onClose={() => setOpenId(null)} />}
    </>
  );
}

type ItemProps = {
  readonly records: Records;
  readonly photograph: Photograph;
  readonly about: string;
  readonly onOpen: () => void;
};

function Item({ records, photograph, about, onOpen }: ItemProps) {
  const title = photographTitle(photograph);
  const { id, mediaType } = photograph;
  return (
    <li className={styles.item}>
      <button type="button" className={styles.open} aria-label={words.show(title)} onClick={onOpen}>
        <PhotographImage records={records} id={id} mediaType={mediaType} alt="" className={styles.thumbnail} />
      </button>
      <p className={styles.caption}>{title}</p>
      <p className={styles.about}>{about}</p>
    </li>
  );
}
