/** What travels between the page, the audio thread and the worker that listens: types only, for layers that cannot import each other. */

/** A stretch of mono samples, full scale ±1, without a gap inside. */
export type SoundBlock = {
  readonly kind: 'block';
  /** The audio clock's count at the first sample; a gap to the end of the block before means that sound is missing. */
  readonly firstFrame: number;
  readonly samples: Float32Array<ArrayBuffer>;
};

/** `flushed` answers a request to send what is still being collected: nothing from before it is outstanding. */
export type BlockMessage = SoundBlock | { readonly kind: 'flushed' };

/** What the audio thread understands; `Port` is the platform's MessagePort, which this layer does not know. */
export type BlockRequest<Port> = { readonly kind: 'connect'; readonly blocks: Port } | { readonly kind: 'flush' };
