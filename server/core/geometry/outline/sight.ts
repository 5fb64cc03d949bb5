/** The boat axis along which one looks: 0 from astern (y, z), 1 from the side (x, z), 2 from above (x, y). */
export type Sight = 0 | 1 | 2;

/** The two axes that one sees, looking along a third. */
export const SEEN: readonly [readonly [1, 2], readonly [0, 2], readonly [0, 1]] = [
  [1, 2],
  [0, 2],
  [0, 1],
];
