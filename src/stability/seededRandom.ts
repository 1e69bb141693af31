/** Random numbers from a seed for trials on a screen: mulberry32 for the even ones (T. Ettinger, public domain, 2017; from memory), Box–Muller. */
import type { SimulationRandom } from './simulation/historyPlan.ts';

export function seededSimulation(seed: number): SimulationRandom {
  let state = seed >>> 0;
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  return {
    uniform,
    normal: () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
  };
}
