/** The service worker from the page's side: it is set up once, and a newer program that waits is told. */
import type { TakeOver } from './offlineScope.ts';

let waiting: ServiceWorker | null = null;
const listeners = new Set<() => void>();

/** The newer program that is ready on this device and waits to be asked; null where there is none. */
export function waitingVersion(): ServiceWorker | null {
  return waiting;
}

export function onWaitingVersion(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Makes the program work without a network from now on. Where a browser has no service workers, nothing changes. */
export async function keepProgramOffline(): Promise<void> {
  // The build puts this link on the page; while developing there is nothing that could be kept.
  const isBuilt = document.querySelector('link[rel="manifest"]') !== null;
  if (!isBuilt || !('serviceWorker' in navigator)) return;
  try {
    const registration = await navigator.serviceWorker.register('./offlineWorker.js');
    tell(registration.waiting);
    registration.addEventListener('updatefound', () => {
      const found = registration.installing;
      found?.addEventListener('statechange', () => tell(registration.waiting));
    });
  } catch (error) {
    console.info('The program is not kept for use without a network:', error);
  }
}

/** The first version of a device takes over by itself; only where one is in charge already, another waits. */
function tell(version: ServiceWorker | null): void {
  if (navigator.serviceWorker.controller === null || version === waiting) return;
  waiting = version;
  for (const listener of listeners) listener();
}

/** Loads the page anew as the newer program. Other open pages go on as they are until they are loaded again. */
export function loadNewVersion(): void {
  navigator.serviceWorker.addEventListener('controllerchange', () => window.location.reload(), { once: true });
  waiting?.postMessage('take over' satisfies TakeOver);
}
