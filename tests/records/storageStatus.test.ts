import { describe, expect, it } from 'vitest';
import { askForPersistence, storageStatus } from '../../src/records/storageStatus.ts';

const NOTHING_KNOWN = { usedBytes: null, quotaBytes: null, isPersistent: null };

describe('storageStatus', () => {
  it('gives what the browser says', async () => {
    const storage = { estimate: async () => ({ usage: 7, quota: 100 }), persisted: async () => true };
    expect(await storageStatus(storage)).toEqual({ usedBytes: 7, quotaBytes: 100, isPersistent: true });
  });

  it('says null, not 0, for what the browser does not tell', async () => {
    expect(await storageStatus({})).toEqual(NOTHING_KNOWN);
    expect(await storageStatus({ estimate: async () => ({}) })).toEqual(NOTHING_KNOWN);
    const refusing = { estimate: () => Promise.reject(new Error('private')), persisted: async () => false };
    expect(await storageStatus(refusing)).toEqual({ ...NOTHING_KNOWN, isPersistent: false });
  });

  it('works where there is no navigator.storage', async () => {
    expect(await storageStatus()).toEqual(NOTHING_KNOWN);
    expect(await askForPersistence()).toBeNull();
  });
});

describe('askForPersistence', () => {
  it.each([true, false])('passes on the answer %s', async (answer) => {
    expect(await askForPersistence({ persist: async () => answer })).toBe(answer);
  });
});
