/** Numbers that look random and are the same at every run. */
export interface Seeded {
  /** Even between 0 and 1. */
  readonly even: () => number;
  /** Normal: mean 0, standard deviation 1 (Box and Muller). */
  readonly normal: () => number;
}

/** The generator mulberry32 (T. Ettinger; from memory): good enough to draw boats with. */
export function seeded(seed: number): Seeded {
  let state = seed >>> 0;
  const even = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - even())) * Math.cos(2 * Math.PI * even());
  return { even, normal };
}
