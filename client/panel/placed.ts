/**
 * How what belongs to the boat lies in its picture: it is drawn as the boat is built, and its group is turned as it lies in
 * the water. Nothing else in a picture is turned.
 */
export const howItLies = (element: Element): DOMMatrix =>
  new DOMMatrix(element.closest('.boat')?.getAttribute('transform') ?? '');

/** The box about an entry, user units of its picture; what a hand does to the entry is left out. */
export function boxInPicture(entry: SVGGraphicsElement): DOMRect {
  const { x, y, width, height } = entry.getBBox();
  const place = howItLies(entry);
  const corners = [x, x + width].flatMap(at => [y, y + height].map(down => place.transformPoint({ x: at, y: down })));
  const [xs, ys] = [corners.map(corner => corner.x), corners.map(corner => corner.y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  return new DOMRect(left, top, Math.max(...xs) - left, Math.max(...ys) - top);
}
