// The pure layers are compiled without DOM and Node types; this is the little of the standard platform that they may use.
declare class TextDecoder {
  constructor(label?: string, options?: { fatal?: boolean });
  decode(input?: Uint8Array, options?: { stream?: boolean }): string;
}
declare class TextEncoder {
  encode(input?: string): Uint8Array<ArrayBuffer>;
}
/** Not in every browser: its absence has to be reckoned with. */
declare class CompressionStream {
  constructor(format: 'deflate-raw');
  readonly writable: { getWriter(): { write(bytes: Uint8Array<ArrayBuffer>): Promise<void>; close(): Promise<void> } };
  readonly readable: { getReader(): { read(): Promise<{ done: false; value: Uint8Array } | { done: true }> } };
}
/** Likewise. */
declare class DecompressionStream {
  constructor(format: 'deflate-raw');
  readonly writable: {
    getWriter(): {
      readonly closed: Promise<unknown>;
      write(bytes: Uint8Array<ArrayBuffer>): Promise<void>;
      close(): Promise<void>;
      abort(reason: unknown): Promise<void>;
    };
  };
  readonly readable: {
    getReader(): {
      read(): Promise<{ done: false; value: Uint8Array } | { done: true }>;
      cancel(): Promise<void>;
    };
  };
}
