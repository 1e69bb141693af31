/** Why a single reading was set aside, as figures of closed kinds; each page says it in its own language. */
export type OutlierReason =
  /** Off its neighbours at one as-left alone. */
  | { readonly kind: 'stood-off-once'; readonly offCents: number }
  /** At one as-found off what its neighbours did. */
  | { readonly kind: 'found-off-once'; readonly offCents: number; readonly direction: 'sharp' | 'flat' }
  /** Left off where this string is usually left. */
  | { readonly kind: 'left-off'; readonly offCents: number };

/** In English, for files and the command line. */
export function outlierSentence(reason: OutlierReason): string {
  const off = `${reason.offCents.toFixed(1)} cents`;
  switch (reason.kind) {
    case 'stood-off-once':
      return `it stood ${off} off its neighbours as left, and only then: mis-set, or a wrong take`;
    case 'found-off-once':
      return `it was found ${off} ${reason.direction} of what its neighbours did, once: a wrong take, or moved by hand`;
    case 'left-off':
      return `left ${off} off where this string is usually left: mis-set, or a wrong take`;
  }
}
