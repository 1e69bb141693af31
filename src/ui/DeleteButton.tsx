import { useState } from 'react';
import { Button } from './Button.tsx';
import { type Deleter, deleteWithUndo } from './deleteWithUndo.ts';
import { WriteFault, type WriteFaultValue } from './WriteFault.tsx';

type DeleteButtonProps<Target> = {
  readonly records: Deleter<Target>;
  readonly target: Target;
  readonly children: string;
  /** What the bar says that offers the way back. */
  readonly message: string;
  /** For screen readers, where several buttons bear the same word. */
  readonly label?: string;
  readonly onDeleted?: () => void;
};

/** Deletes without asking: the bar at the foot of the page and the bin are the way back. */
export function DeleteButton<Target>(props: DeleteButtonProps<Target>) {
  const { records, target, children, message, label, onDeleted } = props;
  const [fault, setFault] = useState<WriteFaultValue | null>(null);
  const press = async () => {
    const failure = await deleteWithUndo(records, [target], message);
    setFault(failure);
    if (!failure) onDeleted?.();
  };
  return (
    <>
      <WriteFault fault={fault} />
      <Button look="quiet" onPress={() => void press()} {...(label !== undefined && { label })}>
        {children}
      </Button>
    </>
  );
}
