import { scale } from '../form/vector.ts';
import { type Cuttable, emptyImmersion, type Immersion } from './immersion.ts';

/**
 * A body in the place of another, with a volume (m3) that was measured: each slice of it is so much more or less, its
 * centroid is the same. A body that has that volume already is given back.
 */
export function scaledTo(body: Cuttable, volume: number): Cuttable {
  const factor = volume / body.volume;
  if (Math.abs(factor - 1) < ROUNDING) return body;
  return {
    volume,
    moment: scale(body.moment, factor),
    box: body.box,
    extent: n => body.extent(n),
    cut: (n, h, sums) => {
      const own = emptyImmersion();
      body.cut(n, h, own);
      for (const key of KEYS) sums[key] += factor * own[key];
    },
    get rough() {
      return body.rough && scaledTo(body.rough, factor * body.rough.volume);
    },
  };
}

/** Two sums of the same volumes differ by so much. */
const ROUNDING = 1e-12;

const KEYS = Object.keys(emptyImmersion()) as readonly (keyof Immersion)[];
