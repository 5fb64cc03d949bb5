/** SVG text made into elements that can do nothing but be looked at. */

const SVG = 'http://www.w3.org/2000/svg';
/** Elements that could bring in or run something else. */
const STRANGERS = new Set(['script', 'foreignObject', 'image', 'use', 'iframe', 'style', 'a', 'animate', 'set']);

/** Reads one picture as XML; null when it is none, or holds anything but drawing. */
export function readSvg(text: string): SVGSVGElement | null {
  const root = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
  if (!(root instanceof SVGSVGElement)) return null;
  const all = [root, ...root.querySelectorAll('*')];
  return all.every(isDrawing) ? root : null;
}

const isDrawing = (element: Element): boolean =>
  element.namespaceURI === SVG &&
  !STRANGERS.has(element.localName) &&
  [...element.attributes].every(({ localName }) => !localName.startsWith('on') && localName !== 'href');
