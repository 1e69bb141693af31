import { useRef } from 'react';
import { Button, type ButtonLook } from './Button.tsx';

type FilePickerProps = {
  readonly children: string;
  readonly onPick: (files: readonly File[]) => void;
  /** For the file dialog alone: what a file really is, its reader finds out. */
  readonly accept: string;
  readonly isMultiple?: boolean;
  /** Asks a tablet for its camera instead of its files. */
  readonly usesCamera?: boolean;
  readonly look?: ButtonLook;
  readonly isDisabled?: boolean;
};

/** A button that opens the file dialog. */
export function FilePicker(props: FilePickerProps) {
  const {
    children,
    onPick,
    accept,
    isMultiple = false,
    usesCamera = false,
    look = 'plain',
    isDisabled = false,
  } = props;
  const input = useRef<HTMLInputElement>(null);
  const pick = (list: FileList | null) => {
    const files = [...(list ?? [])];
    if (input.current) input.current.value = ''; // the same file may be chosen again
    if (files.length > 0) onPick(files);
  };
  return (
    <>
      <input
        ref={input}
        hidden
        type="file"
        accept={accept}
        multiple={isMultiple}
        {...(usesCamera && { capture: 'environment' as const })}
        aria-label={children}
        tabIndex={-1}
        onChange={(event) => pick(event.target.files)}
      />
      <Button look={look} isDisabled={isDisabled} onPress={() => input.current?.click()}>
        {children}
      </Button>
    </>
  );
}
