import { describe, expect, it } from 'vitest';
import { createLatestWriter } from '../../../src/screens/stringing/latestWriter.ts';

/** A write that ends when the test says so. */
function heldWrites() {
  const begun: { value: string; end: (outcome: { written: true } | { written: false; reason: string }) => void }[] = [];
  const writer = createLatestWriter<string, { readonly reason: string }>(
    (value) => new Promise((resolve) => begun.push({ value, end: resolve })),
  );
  const end = async (index: number, outcome: Parameters<(typeof begun)[number]['end']>[0] = { written: true }) => {
    begun[index]?.end(outcome);
    await new Promise((resolve) => setTimeout(resolve, 0));
  };
  return { writer, end, values: () => begun.map(({ value }) => value) };
}

describe('a writer of the newest version', () => {
  it('writes at once', async () => {
    const { writer, end, values } = heldWrites();
    writer.put('a');
    expect(values()).toEqual(['a']);
    expect(writer.state().kind).toBe('writing');
    expect(writer.unsaved()).toBe('a');
    await end(0);
    expect(writer.state().kind).toBe('saved');
    expect(writer.unsaved()).toBeNull();
  });

  it('writes one after another, and passes over versions that a newer one holds', async () => {
    const { writer, end, values } = heldWrites();
    writer.put('a');
    writer.put('b');
    writer.put('c');
    expect(values()).toEqual(['a']);
    await end(0);
    expect(values()).toEqual(['a', 'c']);
    expect(writer.unsaved()).toBe('c');
    await end(1);
    expect(writer.state().kind).toBe('saved');
  });

  it('keeps what could not be written, says so, and tries again when asked and with the next change', async () => {
    const { writer, end, values } = heldWrites();
    const told: string[] = [];
    writer.onChange(() => told.push(writer.state().kind));
    writer.put('a');
    await end(0, { written: false, reason: 'storage-full' });
    expect(writer.state()).toMatchObject({ kind: 'failed', failure: { reason: 'storage-full' } });
    expect(writer.unsaved()).toBe('a');
    writer.tryAgain();
    await end(1, { written: false, reason: 'storage-full' });
    writer.put('b');
    await end(2);
    expect(values()).toEqual(['a', 'a', 'b']);
    expect(writer.unsaved()).toBeNull();
    expect(told).toEqual(['writing', 'failed', 'writing', 'failed', 'writing', 'saved']);
  });

  it('goes on with a newer version after a failure', async () => {
    const { writer, end, values } = heldWrites();
    writer.put('a');
    writer.put('b');
    await end(0, { written: false, reason: 'failed' });
    expect(values()).toEqual(['a', 'b']);
    await end(1);
    expect(writer.state().kind).toBe('saved');
  });
});
