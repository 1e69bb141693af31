/** What the built page may do, told to the browser: nothing from another host, no script but its own files, no markup from text. */
import type { Plugin } from 'vite';

const POLICY: Readonly<Record<string, string>> = {
  'default-src': "'none'",
  // The decoders of FLAC, Ogg and MP3 are WebAssembly inside the program's own files.
  'script-src': "'self' 'wasm-unsafe-eval'",
  'worker-src': "'self'",
  'style-src': "'self'",
  'img-src': "'self' data: blob:",
  'media-src': "'self' blob:",
  'connect-src': "'self'",
  'manifest-src': "'self'",
  'base-uri': "'none'",
  'form-action': "'none'",
  // Text is never taken for markup: the browser itself refuses (W3C Trusted Types). The one policy is in src/app/ownScripts.ts.
  'require-trusted-types-for': "'script'",
  'trusted-types': 'default',
};

export const CONTENT_SECURITY_POLICY = Object.entries(POLICY)
  .map(([directive, sources]) => `${directive} ${sources}`)
  .join('; ');

/** What a host should send besides; `npm start` does. A page cannot say these of itself. */
export const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy': `${CONTENT_SECURITY_POLICY}; frame-ancestors 'none'`,
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Permissions-Policy': 'microphone=(self), camera=(self), geolocation=()',
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
};

/** Vite plugin: puts the policy into the built page, so that it holds on every host and without one. */
export function securityPolicyPlugin(): Plugin {
  const tags = [
    { 'http-equiv': 'Content-Security-Policy', content: CONTENT_SECURITY_POLICY },
    { name: 'referrer', content: 'no-referrer' },
  ];
  return {
    name: 'security-policy',
    apply: 'build',
    transformIndexHtml: () => tags.map((attrs) => ({ tag: 'meta', attrs, injectTo: 'head-prepend' as const })),
  };
}
