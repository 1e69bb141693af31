import { expect, it } from 'vitest';
import { type AwakePage, type AwakeState, keepScreenAwake } from '../../src/capture/keepScreenAwake.ts';

class Lock extends EventTarget {
  isReleased = false;
  readonly release = async () => {
    this.isReleased = true;
    this.dispatchEvent(new Event('release'));
  };
}

class Paper extends EventTarget {
  visibilityState: DocumentVisibilityState = 'visible';
  turn(to: DocumentVisibilityState): void {
    this.visibilityState = to;
    this.dispatchEvent(new Event('visibilitychange'));
  }
}

function awake(refuses = false) {
  const locks: Lock[] = [];
  const document = new Paper();
  const request = async () => {
    if (refuses) throw new DOMException('battery', 'NotAllowedError');
    const lock = new Lock();
    locks.push(lock);
    return lock;
  };
  const states: AwakeState[] = [];
  const page = { wakeLock: { request }, document } as unknown as AwakePage;
  return { locks, document, states, end: keepScreenAwake(page, (state) => states.push(state)) };
}

const settled = () => new Promise((resolve) => setTimeout(resolve));

it('holds the screen and lets it go when it is no longer wanted', async () => {
  const { locks, states, end } = awake();
  await settled();
  expect(states).toEqual(['asking', 'held']);
  end();
  expect(locks.map((lock) => lock.isReleased)).toEqual([true]);
  expect(states).toEqual(['asking', 'held']);
});

it('takes hold again when the page is seen after having been hidden', async () => {
  const { locks, document, states } = awake();
  await settled();
  document.visibilityState = 'hidden';
  await locks[0]!.release(); // the browser does so for a hidden page
  document.turn('hidden');
  expect(locks).toHaveLength(1);
  document.turn('visible');
  await settled();
  expect(locks.map((lock) => lock.isReleased)).toEqual([true, false]);
  expect(states).toEqual(['asking', 'held', 'held']);
});

it('asks only once while it holds', async () => {
  const { locks, document } = awake();
  document.turn('visible');
  await settled();
  document.turn('visible');
  await settled();
  expect(locks.filter((lock) => !lock.isReleased)).toHaveLength(1);
});

it('says so where the browser refuses, and where it takes the hold away', async () => {
  const refused = awake(true);
  await settled();
  expect(refused.states).toEqual(['asking', 'refused']);
  const taken = awake();
  await settled();
  await taken.locks[0]!.release();
  expect(taken.states).toEqual(['asking', 'held', 'refused']);
});

it('lets go of a hold that is granted after it is no longer wanted', async () => {
  const { locks, end } = awake();
  end();
  await settled();
  expect(locks.map((lock) => lock.isReleased)).toEqual([true]);
});

it('says that it is not supported where there is no such thing', () => {
  const states: AwakeState[] = [];
  const page = { wakeLock: undefined, document: new Paper() } as unknown as AwakePage;
  keepScreenAwake(page, (state) => states.push(state))();
  expect(states).toEqual(['not-supported']);
});
