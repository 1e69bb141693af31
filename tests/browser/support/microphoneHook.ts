/**
 * Puts a file in the microphone's place inside the page. It leaves out the device and Chromium's stream buffer, which drop
 * and insert sound at random, and nothing else: what the page hears is the file, sample by sample.
 */
import type { BrowserContext } from 'playwright-core';

export async function hookMicrophone(context: BrowserContext, wave: Buffer): Promise<void> {
  await context.route('**/__microphone.wav', (route) => route.fulfill({ body: wave, contentType: 'audio/wav' }));
  await context.addInitScript(() => {
    let file: ArrayBuffer | undefined;
    navigator.mediaDevices.getUserMedia = async () => {
      file = await (await fetch('/__microphone.wav')).arrayBuffer();
      return new MediaStreamAudioDestinationNode(new AudioContext(), { channelCount: 1 }).stream;
    };
    AudioContext.prototype.createMediaStreamSource = function (this: AudioContext) {
      const output = new GainNode(this);
      const play = async () => {
        const buffer = await this.decodeAudioData((file ?? new ArrayBuffer()).slice(0));
        const source = new AudioBufferSourceNode(this, { buffer, loop: true });
        source.connect(output);
        source.start();
      };
      void play();
      return output as unknown as MediaStreamAudioSourceNode;
    };
  });
}
