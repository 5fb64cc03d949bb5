import type { Polyhedron } from '../../server/core/geometry/form/form.ts';

/**
 * The yardstick: the volume below the level z = h of a closed mesh, by a plain loop over all its triangles. What it takes
 * tells how fast the machine is, and how much of it others leave.
 */
export function plainLoop({ vertices, faces }: Polyhedron, h: number): number {
  let volume = 0;
  for (let i = 0; i < faces.length; i += 3) {
    const a = 3 * faces[i]!;
    const b = 3 * faces[i + 1]!;
    const c = 3 * faces[i + 2]!;
    // Half the area of the triangle's shadow on the surface, and the depth of its middle, where it is wholly below.
    const [za, zb, zc] = [vertices[a + 2]! - h, vertices[b + 2]! - h, vertices[c + 2]! - h];
    const wet = (za < 0 ? 1 : 0) + (zb < 0 ? 1 : 0) + (zc < 0 ? 1 : 0);
    if (wet === 0) continue;
    const shadow =
      ((vertices[b]! - vertices[a]!) * (vertices[c + 1]! - vertices[a + 1]!) -
        (vertices[c]! - vertices[a]!) * (vertices[b + 1]! - vertices[a + 1]!)) /
      2;
    const whole = (shadow * (za + zb + zc)) / 3;
    if (wet === 3) {
      volume += whole;
      continue;
    }
    // The corner alone on its side: its tip has a share of the shadow, and a third of its height for depth.
    const isTipWet = wet === 1;
    const alone = za < 0 === isTipWet ? za : zb < 0 === isTipWet ? zb : zc;
    const others = za + zb + zc - alone;
    const product = alone === za ? zb * zc : alone === zb ? za * zc : za * zb;
    const tip = (shadow * alone ** 3) / (3 * (alone * alone - alone * others + product));
    volume += isTipWet ? tip : whole - tip;
  }
  return volume;
}
