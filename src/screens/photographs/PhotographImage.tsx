import { useEffect, useState } from 'react';
import type { PhotographId } from '../../piano/ids.ts';
import type { Records } from '../../records/records.ts';
import { texts } from '../../ui/texts.ts';
import styles from './photographs.module.css';

type PhotographImageProps = {
  readonly records: Records;
  readonly id: PhotographId;
  readonly mediaType: string;
  readonly alt: string;
  readonly className: string | undefined;
};

/** The picture itself, read when it is shown and let go of afterwards. */
export function PhotographImage({ records, id, mediaType, alt, className }: PhotographImageProps) {
  const [address, setAddress] = useState<string | null | undefined>(undefined);
  useEffect(() => {
    let isWanted = true;
    let made: string | null = null;
    records.photographFile(id).then(
      (file) => {
        if (!isWanted) return;
        made = file ? URL.createObjectURL(new Blob([file.bytes], { type: mediaType })) : null;
        setAddress(made);
      },
      () => isWanted && setAddress(null),
    );
    return () => {
      isWanted = false;
      if (made !== null) URL.revokeObjectURL(made);
    };
  }, [records, id, mediaType]);
  if (address === undefined) return <span className={styles.missing} />;
  if (address === null) return <span className={styles.missing}>{texts.photographs.dialog.unreadable}</span>;
  return <img className={className} src={address} alt={alt} onError={() => setAddress(null)} />;
}
