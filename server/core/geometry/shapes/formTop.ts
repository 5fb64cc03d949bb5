import { boundsOf, sliceForeAft } from '../cut/solids.ts';
import type { Form, Revolved } from '../form/form.ts';

/** Half the length that is looked at, m: less than a tape shows. */
const SLICE_HALF = 1e-5;

/** The highest point of a form at a station, m above the baseline; null where it does not reach. */
export function formTop(form: Form, station: number): number | null {
  if (form.shape === 'compound') return highest(form.parts.map(part => formTop(part, station)));
  if (form.shape === 'ball') {
    const rise = form.radius ** 2 - (station - form.centre[0]) ** 2;
    return rise >= 0 ? form.centre[2] + Math.sqrt(rise) : null;
  }
  if (form.shape === 'revolved' && Math.abs(form.axis[0]) !== 1) return crosswiseTop(form, station);
  const slice = sliceForeAft(form, station - SLICE_HALF, station + SLICE_HALF);
  return slice ? boundsOf(slice).to[2] : null;
}

/** Of a body of revolution that stands upright or lies athwart: of its disks, and of straight lines between them. */
function crosswiseTop({ origin, axis, profile }: Revolved, station: number): number | null {
  const away = Math.abs(station - origin[0]);
  const tops = profile.flatMap(([s, radius], i) => {
    const next = profile[i + 1] ?? [s, radius];
    // Where the radius is just what it takes to reach the station.
    const share = next[1] === radius ? 0 : (away - radius) / (next[1] - radius);
    const between = share > 0 && share < 1 ? s + share * (next[0] - s) : s;
    const isThere = radius >= away || (share > 0 && share < 1);
    const flank = axis[2] === 0 ? Math.sqrt(Math.max(0, radius ** 2 - away ** 2)) : 0;
    return isThere ? [origin[2] + axis[2] * s + flank, origin[2] + axis[2] * between + flank] : [];
  });
  return highest(tops);
}

function highest(tops: readonly (number | null)[]): number | null {
  const known = tops.filter(top => top !== null);
  return known.length > 0 ? Math.max(...known) : null;
}
