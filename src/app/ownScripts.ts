/**
 * Which addresses may be run as a script: files of this program. The security policy of the built page lets every such address pass
 * through here (W3C Trusted Types), and lets no text become markup at all, since there is no policy for markup.
 */

type ScriptPolicy = { readonly createScriptURL: (address: string) => string };
type TrustedTypes = { createPolicy(name: 'default', policy: ScriptPolicy): unknown };

/** Browsers without trusted types need nothing. */
export function trustOwnScripts(): void {
  const { trustedTypes } = window as { trustedTypes?: TrustedTypes };
  trustedTypes?.createPolicy('default', { createScriptURL: ownScript });
}

/** @throws {TypeError} where it is not this program's own */
function ownScript(address: string): string {
  const { origin } = new URL(address, document.baseURI);
  if (origin !== window.location.origin) throw new TypeError(`not a script of this program: ${address}`);
  return address;
}
