import type { Ball } from '../form/form.ts';
import { addScaled, dot, scale } from '../form/vector.ts';
import { ballExtent } from './ball.ts';
import { addPatch, addSecond, addWhole } from './immersion.ts';
import { planeFrame } from './planeFrame.ts';
import { type Wall, wallOfSurface } from './wall.ts';

/**
 * A hollow ball. Archimedes: a zone of the sphere has the area 2·pi·R by its height; with the plane at t above the
 * centre the wet zone's first moment about the centre, towards n, is -pi·R(R² - t²).
 */
export function ballWall(form: Ball): Wall {
  const { centre, radius } = form;
  const area = 4 * Math.PI * radius * radius;
  const moment = scale(centre, area);
  return wallOfSurface({
    area,
    moment,
    extent: n => ballExtent(form, n),
    cut(n, h, thickness, sums) {
      const t = h - dot(n, centre);
      if (t >= radius) addWhole({ volume: thickness * area, moment: scale(moment, thickness) }, sums);
      if (Math.abs(t) >= radius) return;
      const strip = 2 * Math.PI * radius * thickness;
      const zone = strip * (radius + t);
      const waterline = (radius - t) * (radius + t);
      const lower = (-strip * waterline) / 2;
      sums.volume += zone;
      sums.mx += zone * centre[0] + lower * n[0];
      sums.my += zone * centre[1] + lower * n[1];
      sums.mz += zone * centre[2] + lower * n[2];
      addPatch(sums, strip, addScaled(centre, n, t));
      for (const direction of planeFrame(n)) addSecond(sums, (strip * waterline) / 2, direction);
    },
  });
}
