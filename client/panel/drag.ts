/** A point in a picture's own units: x to the right, y down. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** How a picture lies on the boat: its bow to the left. */
export interface PictureScale {
  /** Picture units per metre. */
  readonly perMetre: number;
  /** How the boat is trimmed in it, rad, positive bow up. */
  readonly trim: number;
}

/** What a picture tells of its scale; null for one that does not show the boat along its length. */
export function scaleOf(scale: string | undefined, trim: string | undefined): PictureScale | null {
  const perMetre = Number(scale ?? Number.NaN);
  const radians = Number(trim ?? Number.NaN);
  return perMetre > 0 && Number.isFinite(radians) ? { perMetre, trim: radians } : null;
}

/** How far along the boat a way across the picture is, m, positive aft. */
export const alongBoat = (from: Point, to: Point, { perMetre, trim }: PictureScale): number =>
  ((to.x - from.x) * Math.cos(trim) + (to.y - from.y) * Math.sin(trim)) / perMetre;

/** The way across the picture of what is moved so far along the boat, m, positive aft. */
export const acrossPicture = (metres: number, { perMetre, trim }: PictureScale): Point => ({
  x: metres * perMetre * Math.cos(trim),
  y: metres * perMetre * Math.sin(trim),
});

/** A hand that shakes by less than this many pixels clicks, it does not drag. */
const SHAKE = 4;

export const isDrag = (from: Point, to: Point): boolean => Math.hypot(to.x - from.x, to.y - from.y) > SHAKE;

/** Marks of the tape that a key moves a part by, aft positive; null for any other key. The bow is to the left. */
export function marksOfKey(key: string, isShifted: boolean): number | null {
  const way = key === 'ArrowRight' ? 1 : key === 'ArrowLeft' ? -1 : null;
  return way && way * (isShifted ? 10 : 1);
}
