import type { Analysis } from '../analysis/analysis.ts';
import type { Vec3 } from '../geometry/form/vector.ts';
import type { Sight } from '../geometry/outline/sight.ts';
import { markWords } from './captions.ts';
import type { Centre } from './centres.ts';
import type { DrawnState } from './drawnState.ts';
import type { MarkName } from './marks.ts';
import { seen } from './turn.ts';

/** The centres that a view shows, those that there are. */
export function centresOf(
  { boat }: Analysis,
  { centreOfMass, centreOfBuoyancy, metacentre, centreOfFlotation }: DrawnState,
  along: Sight,
  shown: readonly MarkName[],
): readonly Centre[] {
  const points: Readonly<Record<MarkName, Vec3 | null>> = {
    G: centreOfMass,
    B: centreOfBuoyancy,
    M: metacentre,
    F: centreOfFlotation,
  };
  return shown.flatMap(name => {
    const point = points[name];
    return point ? [{ name, point: seen(point, along), words: markWords(name, point, boat) }] : [];
  });
}
