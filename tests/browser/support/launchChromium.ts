/** Starts a Chromium with the microphone that is wanted. */
import { type Browser, type BrowserContext, chromium } from 'playwright-core';

type Microphone =
  /** None in the machine; the browser says so. */
  | { readonly kind: 'none' }
  /** Chromium's own fake device, which plays the file over and over. */
  | { readonly kind: 'file'; readonly path: string }
  /** The fake device with a user who says no. */
  | { readonly kind: 'refused' };

export function launchChromium(
  executablePath: string,
  microphone: Microphone,
  flags: readonly string[] = [],
): Promise<Browser> {
  return chromium.launch({ executablePath, args: [...FLAGS, ...microphoneFlags(microphone), ...flags] });
}

/** One that keeps its records on the disk, in this folder, as a user's does; a page of `launchChromium` has them in memory alone. */
export function launchOnDisk(executablePath: string, folder: string): Promise<BrowserContext> {
  const args = [...FLAGS, ...microphoneFlags({ kind: 'none' })];
  return chromium.launchPersistentContext(folder, { executablePath, args, acceptDownloads: true });
}

const FLAGS = [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--autoplay-policy=no-user-gesture-required',
];

function microphoneFlags(microphone: Microphone): string[] {
  if (microphone.kind === 'none') return [];
  if (microphone.kind === 'refused')
    return ['--use-fake-device-for-media-stream', '--use-fake-ui-for-media-stream=deny'];
  return [
    '--use-fake-device-for-media-stream',
    '--use-fake-ui-for-media-stream',
    `--use-file-for-fake-audio-capture=${microphone.path}`,
  ];
}
