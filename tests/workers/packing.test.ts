import { inflateRawSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { usualByteWork } from '../../src/files/archive/byteWork.ts';
import { createPackingDesk } from '../../src/workers/doPackingWork.ts';
import { openPacking } from '../../src/workers/openPacking.ts';
import { parsePackingRequest } from '../../src/workers/packingMessages.ts';

/** A worker's two ends in one place; what is sent is copied, as between threads. */
function farEnd(byteWork = usualByteWork()) {
  const end = {
    onmessage: null as ((event: MessageEvent<unknown>) => void) | null,
    onerror: null as ((event: ErrorEvent) => void) | null,
    isEnded: false,
    terminate() {
      end.isEnded = true;
    },
    postMessage(message: unknown) {
      void ask(parsePackingRequest(structuredClone(message)));
    },
  };
  const ask = createPackingDesk(
    (report) => end.onmessage?.({ data: structuredClone(report) } as MessageEvent),
    byteWork,
  );
  return end;
}

const piece = (digit: number) => new Uint8Array(50_000).fill(48 + digit) as Uint8Array<ArrayBuffer>;

describe('packing beside the page', () => {
  it('packs files side by side as the page itself would', async () => {
    const packing = openPacking(farEnd());
    const files = [0, 1].map(() => {
      const pieces: Uint8Array[] = [];
      return { pieces, packer: packing.byteWork.createPacker((bytes) => void pieces.push(bytes)) };
    });
    for (let digit = 0; digit < 10; digit++) for (const { packer } of files) await packer.push(piece(digit));
    const whole = Buffer.concat(Array.from({ length: 10 }, (_, digit) => piece(digit)));
    const own = usualByteWork().createPacker(() => undefined);
    await own.push(new Uint8Array(whole));
    const facts = await own.finish();
    for (const { pieces, packer } of files) {
      expect(await packer.finish()).toEqual(facts);
      expect(inflateRawSync(Buffer.concat(pieces)).equals(whole)).toBe(true);
    }
  });

  it('says where the packing failed, and waits for nothing then', async () => {
    const broken = {
      push: () => Promise.reject(new Error('no memory')),
      finish: () => new Promise<never>(() => undefined),
    };
    const packing = openPacking(farEnd({ ...usualByteWork(), createPacker: () => broken }));
    const packer = packing.byteWork.createPacker(() => undefined);
    await packer.push(piece(1));
    await expect(packer.finish()).rejects.toThrow('no memory');
  });

  it('says where the worker could not be loaded', async () => {
    const worker = farEnd();
    const packing = openPacking(worker);
    const packer = packing.byteWork.createPacker(() => undefined);
    worker.onmessage = null;
    worker.onerror?.({ message: 'not found' } as ErrorEvent);
    await expect(packer.finish()).rejects.toThrow('not found');
    packing.close();
    expect(worker.isEnded).toBe(true);
  });
});
