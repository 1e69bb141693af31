/** What a service worker has around it (W3C Service Workers), as far as ours uses it: types only. */

export type OfflineScope = {
  /** Put before the worker's own text by the build. */
  readonly OFFLINE: { readonly version: string; readonly files: readonly string[] };
  readonly registration: { readonly scope: string };
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  oninstall: (event: Lasting) => void;
  onactivate: (event: Lasting) => void;
  onfetch: (event: Fetching) => void;
  onmessage: (event: { readonly data: unknown }) => void;
};

type Lasting = { waitUntil(work: Promise<unknown>): void };
type Fetching = { readonly request: Request; respondWith(answer: Promise<Response>): void };

/** What the page says to a new version that waits. A type alone, so that the worker stays one file. */
export type TakeOver = 'take over';
