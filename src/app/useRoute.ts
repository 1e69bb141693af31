import { useSyncExternalStore } from 'react';
import { hrefToRoute, type Route } from '../ui/routes.ts';

/** The screen that the address names, now and after every step forward or back. */
export function useRoute(): { readonly route: Route; readonly address: string } {
  const address = useSyncExternalStore(onAddress, () => window.location.hash);
  return { route: hrefToRoute(address), address };
}

function onAddress(listener: () => void): () => void {
  window.addEventListener('hashchange', listener);
  return () => window.removeEventListener('hashchange', listener);
}
