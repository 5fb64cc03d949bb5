import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { assembleBodies, emptyCache } from '../../server/core/bodies/assemble.ts';
import { floatSubmerged, type SubmergedNeutral } from '../../server/core/conditions/submerged.ts';
import { floatSurfaced, type SurfacedAfloat } from '../../server/core/conditions/surfaced.ts';
import type { Input } from '../../server/core/uncertainty/input.ts';
import { withInputs } from '../../server/core/uncertainty/withInputs.ts';
import { randomFrom } from '../accuracy/random.ts';

/** A boat as it may truly be. */
export interface Draw {
  readonly surfaced: SurfacedAfloat | null;
  readonly submerged: SubmergedNeutral | null;
}

/** Boats with every input drawn by itself from a normal distribution about its value, by the full model and a seed. */
export function monteCarlo(analysis: Analysis, inputs: readonly Input[], runs: number, seed: number): readonly Draw[] {
  const normal = normalFrom(seed);
  return Array.from({ length: runs }, () => {
    const changes = new Map(inputs.map(input => [input, input.value + input.sigma * normal()]));
    const boat = withInputs(analysis.source, changes);
    const bodies = assembleBodies(boat, emptyCache());
    const surfaced = floatSurfaced(bodies, boat.length);
    const submerged = floatSubmerged(bodies);
    return {
      surfaced: surfaced.status === 'afloat' ? surfaced : null,
      submerged: submerged.status === 'neutral' && submerged.stable ? submerged : null,
    };
  });
}

/** Standard normal numbers by Box and Muller's method (Ann. Math. Stat. 29 (1958) 610-611, from memory). */
function normalFrom(seed: number): () => number {
  const random = randomFrom(seed);
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** Standard deviation of a sample, and the standard error of that by the sample's own fourth moment. */
export function deviation(values: readonly number[]): { readonly sigma: number; readonly error: number } {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const moment = (power: number) => values.reduce((sum, value) => sum + (value - mean) ** power, 0) / values.length;
  const variance = moment(2);
  const sigma = Math.sqrt(variance);
  return { sigma, error: Math.sqrt((moment(4) - variance ** 2) / values.length) / (2 * sigma) };
}
