import { memo } from 'react';
import { Button } from '../../ui/Button.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './recording.module.css';
import { type FootKeys, keyLabel, type RecordingAction } from './recordingKeys.ts';

const words = texts.recording.buttons;

type ControlsProps = {
  readonly canUndo: boolean;
  readonly canCorrect: boolean;
  readonly isPaused: boolean;
  readonly isListening: boolean;
  readonly footKeys: FootKeys;
  readonly onAction: (action: RecordingAction) => void;
};

export const Controls = memo(function Controls({
  canUndo,
  canCorrect,
  isPaused,
  isListening,
  footKeys,
  onAction,
}: ControlsProps) {
  const button = (action: RecordingAction, label: string, isDisabled = false, isPressed?: boolean) => (
    <Button
      isLarge
      isDisabled={isDisabled}
      {...(isPressed !== undefined && { isPressed })}
      shortcut={keyLabel(action, footKeys)}
      onPress={() => onAction(action)}
    >
      {label}
    </Button>
  );
  return (
    <fieldset className={styles.controls} aria-label={texts.recording.controls}>
      {button('back', words.back)}
      {button('skip', words.skip)}
      {button('pause', words.pause, !isListening && !isPaused, isPaused)}
      {button('undo', words.undo, !canUndo)}
      {button('another-note', words.another, !canCorrect)}
      {button('finish', words.finish)}
    </fieldset>
  );
});
