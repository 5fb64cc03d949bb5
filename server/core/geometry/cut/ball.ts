import type { Ball } from '../form/form.ts';
import { addScaled, dot, scale, type Vec3 } from '../form/vector.ts';
import { addPatch, addSecond, addWhole, type Cuttable } from './immersion.ts';
import { planeFrame } from './planeFrame.ts';

export function ballExtent(form: Ball, n: Vec3): readonly [number, number] {
  const middle = dot(n, form.centre);
  return [middle - form.radius, middle + form.radius];
}

/**
 * A solid ball. With the plane at t above the centre, the wet cap has volume pi(2R³/3 + R²t - t³/3) and first moment
 * -pi(R² - t²)²/4 about the centre, towards n (CRC Standard Mathematical Tables, spherical segment, from memory).
 */
export function ballSolid(form: Ball): Cuttable {
  const { centre, radius } = form;
  const volume = (4 / 3) * Math.PI * radius ** 3;
  const moment = scale(centre, volume);
  return {
    volume,
    moment,
    box: { middle: centre, half: [radius, radius, radius] },
    extent: n => ballExtent(form, n),
    cut(n, h, sums) {
      const t = h - dot(n, centre);
      if (t >= radius) addWhole({ volume, moment }, sums);
      if (Math.abs(t) >= radius) return;
      // (R + t)²(2R - t)/3 is the same cap without the cancellation of a shallow one.
      const cap = (Math.PI * (radius + t) ** 2 * (2 * radius - t)) / 3;
      const waterline = (radius - t) * (radius + t);
      const lower = (-Math.PI * waterline * waterline) / 4;
      sums.volume += cap;
      sums.mx += cap * centre[0] + lower * n[0];
      sums.my += cap * centre[1] + lower * n[1];
      sums.mz += cap * centre[2] + lower * n[2];
      const disk = Math.PI * waterline;
      addPatch(sums, disk, addScaled(centre, n, t));
      for (const direction of planeFrame(n)) addSecond(sums, (disk * waterline) / 4, direction);
    },
  };
}
