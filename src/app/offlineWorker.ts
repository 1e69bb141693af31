/**
 * The service worker: the whole program stands in a cache of its own, so that a music room needs no network.
 *
 * A file of the program is answered from the cache and never from the network; everything else is left to the browser. A new
 * version is put into a new cache beside the old one and waits: pages that are open go on with the files they were loaded from,
 * their workers included, until one of them asks for the new version. The cache before the newest stays, for pages that are
 * still open then.
 */
import type { OfflineScope, TakeOver } from './offlineScope.ts';

const scope = globalThis as unknown as OfflineScope;
const { version, files } = scope.OFFLINE;
/** Caches belong to the whole origin; another copy of the program at another folder of it has its own. */
const family = `stillpin ${scope.registration.scope} `;
const cacheName = `${family}${version}`;
const own = new Set(files.map((file) => new URL(file, scope.registration.scope).href));

scope.oninstall = (event) => event.waitUntil(store());
scope.onactivate = (event) => event.waitUntil(forgetOldCaches().then(() => scope.clients.claim()));
scope.onmessage = ({ data }) => {
  if (data === ('take over' satisfies TakeOver)) void scope.skipWaiting();
};
scope.onfetch = (event) => {
  const { request } = event;
  if (request.method !== 'GET') return;
  const address = addressOf(request);
  if (own.has(address) || isBuilt(address)) event.respondWith(fromCache(request, address));
};

async function store(): Promise<void> {
  const cache = await caches.open(cacheName);
  // Past the browser's own cache, which may still hold files of the version before.
  await cache.addAll([...own].map((address) => new Request(address, { cache: 'reload' })));
}

/** Keys come in the order of creation (Service Workers, section 5.5): the last but one is the version before. */
async function forgetOldCaches(): Promise<void> {
  const ours = (await caches.keys()).filter((name) => name.startsWith(family) && name !== cacheName);
  await Promise.all(ours.slice(0, -1).map((name) => caches.delete(name)));
}

/** Without what follows `?` or `#`: the page is the same file whatever is asked of it. */
function addressOf(request: Request): string {
  return request.url.replace(/[?#].*$/, '');
}

/** Files whose names carry their contents' hash; those of the version before are in its cache. */
function isBuilt(address: string): boolean {
  return address.startsWith(new URL('assets/', scope.registration.scope).href);
}

async function fromCache(request: Request, address: string): Promise<Response> {
  const current = await caches.open(cacheName);
  // Servers say `Vary: Origin`; the file is the same for every asker.
  const options = { ignoreVary: true };
  const found = (await current.match(address, options)) ?? (await matchOlder(address, options));
  return found ?? fetch(request);
}

async function matchOlder(address: string, options: CacheQueryOptions): Promise<Response | undefined> {
  for (const name of await caches.keys()) {
    if (!name.startsWith(family)) continue;
    const found = await (await caches.open(name)).match(address, options);
    if (found) return found;
  }
  return undefined;
}
