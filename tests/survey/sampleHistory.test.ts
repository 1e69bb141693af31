import { describe, expect, it } from 'vitest';
import { createSampleHistory } from '../../src/survey/sampleHistory.ts';

const counted = (from: number, to: number) => Float32Array.from({ length: to - from }, (_, index) => from + index);

describe('createSampleHistory', () => {
  it.each([1, 3, 7, 40])('gives back the last stretch whatever the blocks (%d samples)', (blockLength) => {
    const history = createSampleHistory(10);
    for (let start = 0; start < 100; start += blockLength)
      history.append(counted(start, Math.min(100, start + blockLength)));
    expect(history.endIndex).toBe(100);
    expect([...history.view(90, 100)]).toEqual([...counted(90, 100)]);
    expect([...history.view(93, 95)]).toEqual([93, 94]);
  });

  it('has zeros before the first sample', () => {
    const history = createSampleHistory(10);
    history.append(Float32Array.of(5, 6));
    expect([...history.view(-2, 2)]).toEqual([0, 0, 5, 6]);
  });

  it('refuses samples that have not come, and samples that are gone', () => {
    const history = createSampleHistory(10);
    history.append(counted(0, 50));
    expect(() => history.view(45, 51)).toThrow(/45 to 51/);
    expect(() => history.view(5, 50)).toThrow(/5 to 50/);
  });
});
