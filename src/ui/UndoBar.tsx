import { useSyncExternalStore } from 'react';
import { Button } from './Button.tsx';
import { texts } from './texts.ts';
import styles from './UndoBar.module.css';
import { currentUndoOffer, offerUndo, onUndoOffer } from './undoOffer.ts';

/** What was just removed, and the way back. */
export function UndoBar() {
  const offer = useSyncExternalStore(onUndoOffer, currentUndoOffer);
  const takeBack = async () => {
    if (!offer) return;
    offerUndo(null);
    await offer.undo();
  };
  return (
    <div className={styles.place} role="status">
      {offer && (
        <div className={styles.bar} data-undo>
          <span>{offer.message}</span>
          <Button look="primary" onPress={() => void takeBack()}>
            {texts.common.undo}
          </Button>
          <Button look="quiet" onPress={() => offerUndo(null)}>
            {texts.common.putAway}
          </Button>
        </div>
      )}
    </div>
  );
}
