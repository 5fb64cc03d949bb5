import { lengthText } from '../wording/numbers.ts';
import type { Placed } from './placed.ts';
import { type Setting, tell } from './readingContext.ts';

/** A wall thicker than this share of the shell's greatest extent is a slip, not a wall (common practice, no source). */
const MOST_THICKNESS = 0.1;

/** Mass, material and form of a meshed shell together say how thick its wall is: a wrong unit shows there. */
export function tellWall(name: string, thickness: number, { from, to }: Placed, setting: Setting): void {
  const extent = Math.max(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
  if (thickness <= MOST_THICKNESS * extent) return;
  const { units } = setting.around;
  tell(
    setting,
    'wall-unlikely',
    ['mass'],
    `Of this mass the wall of “${name}” would be ${lengthText(thickness, units)} thick, on a form only ${lengthText(extent, units)} long. Check the mass, the material and the unit of the mesh.`,
    { severity: 'warning' },
  );
}
