import { Notice } from '../../ui/Notice.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './stringing.module.css';

const words = texts.stringing.scale.cautions;

type Props = { readonly sentences: readonly string[]; readonly safety: string };

/** What to take care of, in one box, and what is said with every figure of pull. */
export function CautionList({ sentences, safety }: Props) {
  if (sentences.length === 0) return <p className={styles.quiet}>{safety}</p>;
  return (
    <Notice kind="caution" word={texts.common.cautionWord}>
      <div className={styles.cautions}>
        <ul className={styles.cautions}>
          {sentences.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
        <p>
          {words.practice} {safety}
        </p>
      </div>
    </Notice>
  );
}
