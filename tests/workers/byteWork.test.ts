import { inflateRawSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { usualByteWork } from '../../src/files/archive/byteWork.ts';
import { parseByteRequest } from '../../src/workers/byteMessages.ts';
import { createByteDesk } from '../../src/workers/doByteWork.ts';
import { openByteWork } from '../../src/workers/openByteWork.ts';

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
      void ask(parseByteRequest(structuredClone(message)));
    },
  };
  const ask = createByteDesk((report) => end.onmessage?.({ data: structuredClone(report) } as MessageEvent), byteWork);
  return end;
}

const piece = (digit: number) => new Uint8Array(50_000).fill(48 + digit) as Uint8Array<ArrayBuffer>;

describe('work on bytes beside the page', () => {
  it('packs files side by side as the page itself would', async () => {
    const desk = openByteWork(farEnd());
    const files = [0, 1].map(() => {
      const pieces: Uint8Array[] = [];
      return { pieces, packer: desk.byteWork.createPacker((bytes) => void pieces.push(bytes)) };
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

  it('reckons what it is shown and leaves the bytes as they are', async () => {
    const desk = openByteWork(farEnd());
    for (const withSha256 of [true, false]) {
      const [far, near] = [desk.byteWork, usualByteWork()].map(({ createDigest }) => createDigest(withSha256));
      for (let digit = 0; digit < 10; digit++) {
        const shown = piece(digit);
        await far?.add(shown);
        await near?.add(shown);
        expect(shown.length).toBe(50_000);
      }
      expect(await far?.facts()).toEqual(await near?.facts());
    }
  });

  it('says where the packing failed, and waits for nothing then', async () => {
    const broken = {
      push: () => Promise.reject(new Error('no memory')),
      finish: () => new Promise<never>(() => undefined),
    };
    const desk = openByteWork(farEnd({ ...usualByteWork(), createPacker: () => broken }));
    const packer = desk.byteWork.createPacker(() => undefined);
    await packer.push(piece(1));
    await expect(packer.finish()).rejects.toThrow('no memory');
  });

  it('says where the worker could not be loaded', async () => {
    const worker = farEnd();
    const desk = openByteWork(worker);
    const packer = desk.byteWork.createPacker(() => undefined);
    worker.onmessage = null;
    worker.onerror?.({ message: 'not found' } as ErrorEvent);
    await expect(packer.finish()).rejects.toThrow('not found');
    desk.close();
    expect(worker.isEnded).toBe(true);
  });
});
