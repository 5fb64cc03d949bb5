import { SaxesParser } from 'saxes';

/** An element of a picture. */
export interface Node {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Node[];
  /** Its own text and that of everything in it. */
  readonly text: string;
}

/** Parses well-formed XML, what groups turn and move put where they put it; throws, saying where, for anything else. */
export function parseXml(xml: string): Node {
  type Open = { name: string; attributes: Record<string, string>; children: Open[]; text: string };
  const root: Open = { name: '', attributes: {}, children: [], text: '' };
  const open: Open[] = [root];
  const parser = new SaxesParser();
  parser.on('error', problem => {
    throw problem;
  });
  parser.on('opentag', tag => {
    const node: Open = {
      name: tag.name,
      attributes: { ...tag.attributes } as Record<string, string>,
      children: [],
      text: '',
    };
    for (const { attributes } of open) {
      if (attributes.transform && node.attributes.d) node.attributes.d = moved(node.attributes.d, attributes.transform);
    }
    open.at(-1)!.children.push(node);
    open.push(node);
  });
  parser.on('text', words => {
    for (const node of open) node.text += words;
  });
  parser.on('closetag', () => {
    open.pop();
  });
  parser.write(xml).close();
  return root.children[0]!;
}

/** The six numbers of an SVG matrix. */
export const matrixOf = (transform: string) =>
  transform.match(/-?[\d.]+/g)!.map(Number) as [number, number, number, number, number, number];

/** Path data by points, through an SVG matrix. */
function moved(data: string, matrix: string): string {
  const [a, b, c, d, e, f] = matrixOf(matrix);
  return data.replace(/([ML])(-?[\d.]+)[ ,](-?[\d.]+)/g, (_, command: string, ...point: string[]) => {
    const [x, y] = point.slice(0, 2).map(Number) as [number, number];
    return `${command}${a * x + c * y + e} ${b * x + d * y + f}`;
  });
}

/** Every element at any depth, the root first. */
export const allNodes = (node: Node): readonly Node[] => [node, ...node.children.flatMap(allNodes)];

const classesOf = (node: Node): readonly string[] => (node.attributes.class ?? '').split(' ');

/** Elements that have all these classes. */
export const withClass = (node: Node, ...classes: readonly string[]): readonly Node[] =>
  allNodes(node).filter(candidate => classes.every(name => classesOf(candidate).includes(name)));

/** The points of path data made of M, L, H, V and Z. */
export function pointsOf(data: string): readonly (readonly [number, number])[] {
  let [x, y] = [0, 0];
  return [...data.matchAll(/([MLHVZ])\s*((?:-?[\d.]+[\s,]*)*)/g)].flatMap(([, command, numbers]) => {
    if (command === 'Z') return [];
    const values = (numbers ?? '')
      .split(/[\s,]+/)
      .filter(Boolean)
      .map(Number);
    if (command === 'H') x = values[0]!;
    else if (command === 'V') y = values[0]!;
    else [x, y] = [values[0]!, values[1]!];
    return [[x, y] as const];
  });
}

/** Middle of an element's first circle. */
export function circleOf(node: Node): readonly [number, number] {
  const circle = allNodes(node).find(({ name }) => name === 'circle')!;
  return [Number(circle.attributes.cx), Number(circle.attributes.cy)];
}
