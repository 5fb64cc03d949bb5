import { BLOCK_CORNERS } from '../form/box.ts';
import type { Vec3 } from '../form/vector.ts';
import { IS_CROSSED, IS_WHOLE, sortingRoom } from './nearFaces.ts';
import type { PlaneAxes } from './planeFrame.ts';

/** Which corners of a block each of its triangles has. */
export const BLOCK_FACES = Uint8Array.from(BLOCK_CORNERS);

const CORNERS = 8;
const FACES = BLOCK_FACES.length / 3;

/** What the last plane made of a block; blocks are cut one at a time. */
export const blockSorted = sortingRoom(CORNERS, FACES);

/** Sorts the triangles of a block as `sortNear` does; `level` is counted from its middle. A corner on the plane is dry. */
export function sortBlock([dx, dy, dz]: Vec3, { x, y, n, level }: PlaneAxes): void {
  const { heights, alongX, alongY, whole, crossed } = blockSorted;
  for (let corner = 0; corner < CORNERS; corner++) {
    const px = corner & 1 ? dx : -dx;
    const py = corner & 2 ? dy : -dy;
    const pz = corner & 4 ? dz : -dz;
    heights[corner] = n[0] * px + n[1] * py + n[2] * pz - level;
    alongX[corner] = x[0] * px + x[1] * py + x[2] * pz;
    alongY[corner] = y[0] * px + y[1] * py + y[2] * pz;
  }
  let wholeCount = 0;
  let crossedCount = 0;
  for (let face = 0; face < FACES; face++) {
    const k = 3 * face;
    const side =
      Number(heights[BLOCK_FACES[k]!]! < 0) +
      2 * Number(heights[BLOCK_FACES[k + 1]!]! < 0) +
      4 * Number(heights[BLOCK_FACES[k + 2]!]! < 0);
    whole[2 * wholeCount] = face;
    whole[2 * wholeCount + 1] = side;
    wholeCount += IS_WHOLE[side]!;
    crossed[2 * crossedCount] = face;
    crossed[2 * crossedCount + 1] = side;
    crossedCount += IS_CROSSED[side]!;
  }
  blockSorted.wholeCount = wholeCount;
  blockSorted.crossedCount = crossedCount;
}
