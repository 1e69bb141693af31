/** Where the sound goes: what capture needs of whoever listens. `openListening` of the workers is one. */
export type SoundSink = {
  /** Takes the receiving end of the channel on which the audio thread posts its blocks. */
  readonly open: (blocks: MessagePort, sampleRateHz: number) => void;
  /** Sound from here on is not meant to be heard; the take in progress ends. */
  readonly pause: () => void;
  readonly resume: () => void;
  /** Sound is missing at this point, though the frame count may not show it. */
  readonly markHole: () => void;
  /** After the audio thread was told to flush; resolves when all that was heard has been dealt with. */
  readonly finish: () => Promise<void>;
};
