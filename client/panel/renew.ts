import { SAME } from './same.ts';

/** Turns what is on the page into what shall be there, element by element: whatever is the same stays the same element. */

/** What the page itself hangs into a picture; the picture knows nothing of it. */
export const ADDED = 'data-added';

/** Gives an element the attributes and the content of another, which is used up. */
export function renew(shown: Element, next: Element): void {
  if (next.hasAttribute(SAME) || shown.isEqualNode(next)) return;
  for (const { name } of [...shown.attributes]) if (!next.hasAttribute(name)) shown.removeAttribute(name);
  for (const { name, value } of next.attributes)
    if (shown.getAttribute(name) !== value) shown.setAttribute(name, value);
  renewContent(shown, next);
}

/** Gives an element the content of another, which is used up. */
export function renewContent(shown: Element, next: ParentNode & Node): void {
  const known = new Map<string, ChildNode[]>();
  for (const child of shown.childNodes) {
    if (isAdded(child)) continue;
    const key = keyOf(child);
    const alike = known.get(key);
    if (alike) alike.push(child);
    else known.set(key, [child]);
  }
  let place = shown.firstChild;
  const stay = new Set<ChildNode>();
  for (const child of [...next.childNodes]) {
    const was = known.get(keyOf(child))?.shift();
    const now = was ? renewed(was, child) : shown.ownerDocument.adoptNode(child);
    stay.add(now);
    if (now === place) place = now.nextSibling;
    else shown.insertBefore(now, place);
  }
  for (const child of [...shown.childNodes]) if (!stay.has(child) && !isAdded(child)) child.remove();
}

function renewed(shown: ChildNode, next: ChildNode): ChildNode {
  if (shown instanceof Element && next instanceof Element) renew(shown, next);
  else if (shown.nodeValue !== next.nodeValue) shown.nodeValue = next.nodeValue;
  return shown;
}

/** What stays the same thing wherever it stands among its neighbours: by its name, or the next of its kind. */
function keyOf(node: ChildNode): string {
  if (!(node instanceof Element)) return node.nodeName;
  const name = node.getAttribute('data-path') ?? node.getAttribute('data-gauge') ?? '';
  const kind = node.getAttribute('class')?.split(' ', 1)[0] ?? '';
  return `${node.localName} ${kind} ${name}`;
}

const isAdded = (node: ChildNode): boolean => node instanceof Element && node.hasAttribute(ADDED);
