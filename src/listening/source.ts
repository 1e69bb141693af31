/** Where the sound comes from and whether it does. */
import type { CaptureFaultReason } from '../capture/captureFault.ts';
import type { LossReason } from '../capture/watchForLoss.ts';

export type Source =
  | { readonly state: 'off' }
  | { readonly state: 'asking' }
  | { readonly state: 'listening' }
  | { readonly state: 'paused' }
  | { readonly state: 'refused'; readonly reason: CaptureFaultReason; readonly detail: string }
  | { readonly state: 'lost'; readonly reason: LossReason; readonly mayReturn: boolean }
  | { readonly state: 'broken'; readonly detail: string };
