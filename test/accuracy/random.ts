/** Numbers from 0 to 1 by a seed, the same on every machine (mulberry32, public domain, from memory). */
export function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

export const between = (random: () => number, from: number, to: number): number => from + (to - from) * random();
