import { formatSeconds } from '../../piano/format.ts';
import { formatSize } from '../../piano/formatSize.ts';
import type { Take, TakeSound } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import { Button } from '../../ui/Button.tsx';
import { FieldRow } from '../../ui/FormPage.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { useObserved } from '../../ui/useObserved.ts';
import { usePlayback } from '../../ui/usePlayback.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import { unpackSound } from '../../workers/unpackSound.ts';
import { ReadingHistory } from './ReadingHistory.tsx';
import { useMeasureAgain } from './useMeasureAgain.ts';

const words = texts.sound;

type Props = { readonly records: Records; readonly take: Take };

/** Hear the take again, measure it again, and what it was read as. */
export function SoundSection({ records, take }: Props) {
  const sound = useObserved<TakeSound | null>(take.id, (onValue, onFault) =>
    records.observe(async () => (await records.sound(take.id)) ?? null, onValue, onFault),
  );
  return (
    <Section title={words.title} note={sound.state === 'ready' && sound.value && keptText(sound.value)}>
      {sound.state !== 'ready' && <ReadState observed={sound} />}
      {sound.state === 'ready' && sound.value === null && <p>{words.take.none}</p>}
      {sound.state === 'ready' && sound.value && <SoundActions records={records} take={take} sound={sound.value} />}
      <ReadingHistory take={take} />
    </Section>
  );
}

function SoundActions({ records, take, sound }: Props & { readonly sound: TakeSound }) {
  const playback = usePlayback(unpackSound);
  const again = useMeasureAgain(records);
  return (
    <>
      <FieldRow>
        <Button onPress={() => (playback.isPlaying ? playback.stop() : void playback.play(sound))}>
          {playback.isPlaying ? words.take.stop : words.take.play}
        </Button>
        <Button isDisabled={again.isRunning} onPress={() => void again.run(take, sound)}>
          {again.isRunning ? words.again.running : words.again.action}
        </Button>
      </FieldRow>
      <p role="status">{playback.fault ? words.take.unplayable(playback.fault) : again.message}</p>
      <WriteFault fault={again.writeFault} />
    </>
  );
}

/** Less missing than this is no loss worth a word. */
const WHOLE_WITHIN_S = 0.05;

function keptText({ durationS, takeDurationS, bytes }: TakeSound): string {
  const size = formatSize(bytes.length);
  if (takeDurationS - durationS < WHOLE_WITHIN_S) return words.take.kept(formatSeconds(durationS), size);
  return words.take.keptOf(formatSeconds(durationS), formatSeconds(takeDurationS), size);
}
