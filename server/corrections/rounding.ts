import type { FileUnits } from '../../schema/units.ts';
import { tapeStep } from '../wording/numbers.ts';
import type { Piece } from './levers.ts';
import type { Share } from './program.ts';

/** Lightest piece worth cutting, kg. */
const LIGHTEST = 0.0005;

/**
 * A share of the solution as a piece that can be cut and laid: length and ends on the tape's marks, inside its room, mass
 * as the scale will show it. Null for a share too small to cut.
 */
export function cutPiece(share: Share, units: FileUnits): Piece | null {
  const { lever } = share;
  if (lever.pieces.length > 0) return wholePiece(share, units);
  const step = tapeStep(units);
  const room = lever.station[1] - lever.station[0];
  const wanted = share.mass / lever.massPerLength;
  const length = Math.min(Math.max(1, Math.round(wanted / step)), Math.floor(room / step + 1e-9)) * step;
  if (share.mass < (lever.material === 'lead' ? LIGHTEST : 0) || wanted < step / 2 || length <= 0) return null;
  const forward = Math.ceil(lever.station[0] / step - 1e-9) * step;
  const start = clamp(Math.round((share.station - length / 2) / step) * step, forward, lever.station[1] - length);
  const offset = clamp(Math.round(share.offset / step) * step, lever.offset[0], lever.offset[1]);
  return { lever, mass: scaleMass(length * lever.massPerLength), station: [start, start + length], offset, counts: [] };
}

/** So many whole pieces side by side, their middle on the tape's marks; their masses are as they are. */
function wholePiece({ lever, mass, station, offset, counts }: Share, units: FileUnits): Piece | null {
  const made = counts.reduce((sum, count, k) => sum + count * lever.pieces[k]!, 0) || mass;
  if (made < LIGHTEST) return null;
  const step = tapeStep(units);
  const half = made / lever.massPerLength / 2;
  const middle = clamp(Math.round(station / step) * step, lever.station[0] + half, lever.station[1] - half);
  return {
    lever,
    mass: made,
    station: [middle - half, middle + half],
    offset: clamp(Math.round(offset / step) * step, lever.offset[0], lever.offset[1]),
    counts,
  };
}

/** What the scale shows, kg: whole grams, or tenths where a gram would be more than a hundredth of the piece. */
function scaleMass(mass: number): number {
  const step = mass < 0.1 ? 1e-4 : 1e-3;
  return Math.round(mass / step) * step;
}

const clamp = (value: number, least: number, most: number): number =>
  most < least ? (least + most) / 2 : Math.min(Math.max(value, least), most);
