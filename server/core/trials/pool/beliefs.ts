/**
 * What is believed beforehand of what may be wrong. Common practice, no source: numbers that leave the readings the last
 * word where there are enough of them.
 */
export const BELIEVED = {
  /** Of a reading, that it is a slip; and how far off it then is: mm of the tape, degrees, part of the tanks. */
  slip: { chance: 0.02, length: 0.02, angle: (10 / 180) * Math.PI, fraction: 0.2 },
  /**
   * That something is not written down: in a compartment, or in the water, where it seldom floats. Its mass by the boat's,
   * of what floats the mass of the water that it displaces: nobody forgets a block of foam that carries half the boat. Its
   * density.
   */
  unlisted: {
    dry: 0.05,
    sinking: 0.04,
    floating: 0.01,
    mass: [0.001, 0.4],
    displaced: [0.001, 0.1],
    density: [30, 11340],
  },
  /**
   * Of a part, that it lies elsewhere along an axis; how far fore and aft, m, and in a small boat by the hull's length: who
   * puts it a hand's breadth off sees it, whatever the boat's size. Athwart and in height by the room.
   */
  elsewhere: { chance: [0.014, 0.004, 0.002], along: 0.025, byLength: 1 / 12, across: 1 / 4 },
  /**
   * Of a thing, that it displaces more or less than written by more than its figures leave open; by which part of it, of a
   * compartment, and of what is weighed and displaces what its density says, or was dunked.
   */
  displaces: { chance: 0.02, compartment: 0.04, other: 0.08 },
  /** Of a shell, that it takes up water, or holds some above the surface. */
  water: { soaked: 0.01, held: 0.01, spread: 0.1 },
  /** That more is wrong than any two of these; what it may weigh, by the boat's mass. */
  several: { chance: 0.005, mass: 0.03 },
  /** The part of a reading's variance that it shares with its like of the same day: the zero of the tape, the eye. */
  shared: 0.25,
} as const;
