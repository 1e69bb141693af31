import type { SoundDropped } from '../../listening/useSoundStore.ts';
import { Notice } from '../../ui/Notice.tsx';
import { texts } from '../../ui/texts.ts';

/** A sound that was not kept; the figures are never at stake. */
export function SoundNotice({ dropped }: { readonly dropped: SoundDropped | null }) {
  if (!dropped) return null;
  const words = texts.sound.dropped;
  return (
    <Notice kind="caution" word={texts.common.cautionWord}>
      {dropped.reason === 'storage-full' ? words['storage-full'] : words.other(dropped.detail)}
    </Notice>
  );
}
