import { bad, good, type Read } from './slip.ts';

/** Which of a mesh file's axes runs aft, to starboard and up: its number (0 x, 1 y, 2 z), and 1 or -1 for its direction. */
export type MeshAxes = readonly [MeshAxis, MeshAxis, MeshAxis];

interface MeshAxis {
  readonly from: 0 | 1 | 2;
  readonly sign: 1 | -1;
}

/** The file is drawn as the boat is measured. */
export const BOAT_AXES: MeshAxes = [
  { from: 0, sign: 1 },
  { from: 1, sign: 1 },
  { from: 2, sign: 1 },
];

const EXPECTED =
  'Expected the file’s axes that run aft, to starboard and up, in this order, such as “-x -y z” for a form drawn with its bow towards +x and its deck towards +z';

/** Reads `-x -y z`. */
export function readAxes(raw: unknown): Read<MeshAxes> {
  if (typeof raw !== 'string') return bad(`${EXPECTED}.`, { start: 0, end: 0 });
  const words = [...raw.matchAll(/[^\s,]+/g)];
  const axes: MeshAxis[] = [];
  for (const word of words) {
    const span = { start: word.index, end: word.index + word[0].length };
    const parts = /^([+-]?)([xyz])$/i.exec(word[0]);
    if (!parts) return bad(`${EXPECTED}; “${word[0]}” is none of x, y, z.`, span);
    const from = 'xyz'.indexOf(parts[2]!.toLowerCase()) as 0 | 1 | 2;
    if (axes.some(axis => axis.from === from)) return bad(`${EXPECTED}; “${word[0]}” stands there twice.`, span);
    axes.push({ from, sign: parts[1] === '-' ? -1 : 1 });
  }
  const [aft, starboard, up] = axes;
  if (aft && starboard && up && axes.length === 3) return good([aft, starboard, up]);
  return bad(`${EXPECTED}; this names ${axes.length}.`, { start: 0, end: 0 });
}

/** As it stands in the file. */
export const axesText = (axes: MeshAxes): string =>
  axes.map(({ from, sign }) => `${sign < 0 ? '-' : ''}${'xyz'[from]}`).join(' ');
