import { texts } from '../../ui/texts.ts';
import styles from './workshop.module.css';

export function InstallProgress({ share }: { readonly share: number }) {
  const percent = Math.round(share * 100);
  return (
    <div className={styles.installing} role="status">
      <p>
        {texts.workshop.demonstration.installing} {texts.workshop.demonstration.progress(percent)}
      </p>
      <progress className={styles.progress} max={100} value={percent} aria-label={texts.workshop.demonstration.title} />
    </div>
  );
}
