/** A plain file server on a free port of this machine, as any static host would serve the built app. */
import { createReadStream, readFileSync, statSync } from 'node:fs';
import { createServer, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { gzipSync } from 'node:zlib';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.wasm': 'application/wasm',
  '.wav': 'audio/wav',
};

export type FolderServer = { readonly url: string; readonly close: () => Promise<void> };

/**
 * @param headers sent with every file, as a host may
 * @param isCompressed as most hosts send text
 */
export async function serveFolder(
  folder: string,
  headers: Readonly<Record<string, string>> = {},
  isCompressed = false,
): Promise<FolderServer> {
  const server = createServer((request, response) => {
    const path = decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname);
    answer(response, join(folder, normalize(path)), headers, isCompressed);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://localhost:${port}/`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

function answer(
  response: ServerResponse,
  path: string,
  headers: Readonly<Record<string, string>>,
  isCompressed: boolean,
): void {
  const file = path.endsWith('/') ? join(path, 'index.html') : path;
  const isFile = statSync(file, { throwIfNoEntry: false })?.isFile() ?? false;
  if (!isFile) {
    response.writeHead(404).end();
    return;
  }
  const type = TYPES[extname(file)] ?? 'application/octet-stream';
  const isPacked = isCompressed && /^(text|application)\//.test(type) && type !== 'application/octet-stream';
  const packing = isPacked ? { 'content-encoding': 'gzip' } : {};
  response.writeHead(200, { ...headers, ...packing, 'content-type': type, vary: 'Origin' }); // as common hosts send it
  if (isPacked) return void response.end(gzipSync(readFileSync(file)));
  createReadStream(file).pipe(response);
}
