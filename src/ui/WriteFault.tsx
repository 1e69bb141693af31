import { Notice } from './Notice.tsx';
import { texts } from './texts.ts';

export type WriteFaultValue = {
  readonly reason: 'storage-full' | 'closed' | 'not-a-record' | 'failed';
  readonly message: string;
};

/** Why an entry was not stored, and what to do. */
export function WriteFault({ fault }: { readonly fault: WriteFaultValue | null }) {
  if (!fault) return null;
  const needsDetail = fault.reason === 'not-a-record' || fault.reason === 'failed';
  return (
    <Notice kind="fault" word={texts.common.faultWord} isUrgent>
      {texts.common.write[fault.reason]} {needsDetail && fault.message}
    </Notice>
  );
}
