import { useMemo, useState } from 'react';
import { formatNote } from '../../piano/format.ts';
import { figureLanguage } from '../../piano/formatLanguage.ts';
import type { Instrument } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import { beatPicture, type PicturedSound, positionInPicture } from '../../report/beatPicture.ts';
import { reportWordsIn } from '../../report/wordsIn.ts';
import { Button } from '../../ui/Button.tsx';
import { saveFile } from '../../ui/chartExport/saveFile.ts';
import { speakingName } from '../../ui/chartExport/speakingName.ts';
import { SelectField } from '../../ui/Field.tsx';
import { FieldRow } from '../../ui/FormPage.tsx';
import { Notice } from '../../ui/Notice.tsx';
import { PageSheet } from '../../ui/PageSheet.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { partialToShow, type SharedPartial, sharedPartials } from './beatPartial.ts';
import { comparisonFile, picturedSound, pictureWords, soundName } from './comparison.ts';
import type { LeveledSound } from './equalLoudness.ts';
import type { HearableSound } from './hearableNotes.ts';
import styles from './hearing.module.css';
import { usePreparedPair } from './useHearing.ts';
import { type PlayPosition, usePlayPair } from './usePlayPair.ts';

const reportWords = reportWordsIn(figureLanguage());
const words = texts.hearing;

type PairProps = {
  readonly instrument: Instrument;
  readonly first: HearableSound;
  readonly second: HearableSound;
};

export function ListenSection({ records, ...pair }: PairProps & { readonly records: Records }) {
  const prepared = usePreparedPair(records, pair.first.take.id, pair.second.take.id);
  return (
    <Section title={words.listen.title} note={reportWords.hearing.loudness}>
      {prepared.state === 'preparing' && <p role="status">{words.preparing}</p>}
      {prepared.state === 'silent' && (
        <Notice kind="caution" word={texts.common.cautionWord}>
          {words.silent}
        </Notice>
      )}
      {prepared.state === 'unreadable' && (
        <Notice kind="fault" word={texts.common.faultWord} isUrgent>
          {words.unreadable(prepared.reason)}
        </Notice>
      )}
      {prepared.state === 'ready' && <Player {...pair} sounds={prepared.sounds} />}
    </Section>
  );
}

type PlayerProps = PairProps & { readonly sounds: readonly [LeveledSound, LeveledSound] };

function Player({ instrument, first, second, sounds }: PlayerProps) {
  const player = usePlayPair(sounds);
  const shared = useMemo(() => sharedPartials(first.take.reading, second.take.reading), [first, second]);
  const [partialNumber, setPartialNumber] = useState<number | null>(null);
  const partial = shared.find((one) => one.partialNumber === partialNumber) ?? partialToShow(shared);
  const pictured = useMemo(() => partial && pictures(first, second, sounds, partial), [first, second, sounds, partial]);
  const save = () => {
    if (!pictured || !partial) return;
    const file = comparisonFile(instrument, [first, second], sounds, pictured, partial.partialNumber);
    const name = speakingName([instrument.name, words.fileName(formatNote(first.take.midi))], 'html');
    saveFile(new Blob([file], { type: 'text/html' }), name);
  };
  return (
    <>
      <FieldRow>
        {player.position ? (
          <Button look="primary" onPress={player.stop}>
            {words.stop}
          </Button>
        ) : (
          <Button look="primary" onPress={() => player.play([0, 1])}>
            {words.playBoth}
          </Button>
        )}
        <Button onPress={() => player.play([0])}>{words.playFirst}</Button>
        <Button onPress={() => player.play([1])}>{words.playSecond}</Button>
        <Button onPress={save} isDisabled={!pictured}>
          {words.save}
        </Button>
      </FieldRow>
      <p role="status" className={styles.status}>
        {player.position && words.nowPlaying(soundName(player.position.index === 0 ? first : second))}
      </p>
      {partial && pictured && (
        <>
          <Picture pictured={pictured} partialNumber={partial.partialNumber} position={player.position} />
          <p className={styles.note}>{reportWords.hearing.partial(partial.partialNumber)}</p>
          <SelectField
            id="hear-partial"
            label={words.partial}
            value={String(partial.partialNumber)}
            choices={shared.map((one) => ({
              value: String(one.partialNumber),
              label: words.partialChoice(one.partialNumber, one.beats),
            }))}
            onChange={(value) => setPartialNumber(Number(value))}
          />
        </>
      )}
    </>
  );
}

function pictures(
  first: HearableSound,
  second: HearableSound,
  sounds: PlayerProps['sounds'],
  partial: SharedPartial,
): [PicturedSound, PicturedSound] {
  return [picturedSound(first, sounds[0], partial, 0), picturedSound(second, sounds[1], partial, 1)];
}

const PICTURE_CSS =
  '.beats { display: block; width: 100%; height: auto; font-family: system-ui, "Noto Sans", sans-serif; }';

type PictureProps = {
  readonly pictured: readonly [PicturedSound, PicturedSound];
  readonly partialNumber: number;
  readonly position: PlayPosition | null;
};

function Picture({ pictured, partialNumber, position }: PictureProps) {
  const tree = useMemo(
    () => beatPicture(pictured, pictureWords([pictured[0].title, pictured[1].title], partialNumber)),
    [pictured, partialNumber],
  );
  const place = position && positionInPicture(pictured, position.index, position.timeS);
  const percent = (share: number) => `${100 * share}%`;
  return (
    <div className={styles.picture}>
      <PageSheet page={tree} css={PICTURE_CSS} isBare />
      {place && (
        <i
          className={styles.position}
          style={{ left: percent(place.x), top: percent(place.top), height: percent(place.height) }}
        />
      )}
    </div>
  );
}
