import { readdirSync, readFileSync } from 'node:fs';
import { textLines } from '../helpers/boatText.ts';
import { binaryStl } from '../helpers/stl.ts';
import { boatOfParts } from './boatOfParts.ts';
import { hullMesh } from './hullMesh.ts';

/** A file that is long work for the server. */
export interface LongWork {
  readonly what: string;
  readonly text: string;
  /** What the mesh file that it names holds. */
  readonly mesh?: Uint8Array;
}

const sample = (name: string): string => readFileSync(`samples/${name}`, 'utf8');

/** The sample with so many trials of one condition, each a little different. */
function withTrials(
  count: number,
  of: readonly ('surfaced' | 'submerged')[],
  head = sample('dunlin.boat.yaml').split(/^trials:.*$/m)[0]!,
): string {
  const trials = Array.from({ length: count }, (_, i) => {
    const by = ((i * 0.618034) % 1) - 0.5;
    return of[i % of.length] === 'surfaced'
      ? `  - { condition: surfaced, marks: [{ station: 60 mm, height: ${(74 + by).toFixed(1)} mm }, { station: 660 mm, height: ${(73 - by).toFixed(1)} mm }] }`
      : `  - { condition: submerged, fill: ${(60 + by).toFixed(1)} % ± 2 %, trim: ${(13 + by).toFixed(1)}° ± 1° }`;
  });
  return head + textLines(['trials:', ...trials]);
}

/** The bench boat with another outer hull. */
const withHull = (lines: readonly string[]): string =>
  boatOfParts(20).replace(/ +profile: \[\[0, 0\].*\n.*\n/, () => textLines(lines.map(line => `      ${line}`)));

const fullness = (t: number): number => 54 * (4 * t * (1 - t)) ** 0.4;

/** A table of offsets over the length of the boat, all sections full. */
function offsets(sections: number, points: number): string {
  const rows = Array.from({ length: sections }, (_, i) => {
    const t = i / (sections - 1);
    const size = 1 + fullness(t);
    const outline = Array.from({ length: points }, (__, k) => {
      const angle = (Math.PI * k) / (points - 1);
      return `[${(size * Math.sin(angle)).toFixed(3)}, ${(54 - size * Math.cos(angle)).toFixed(3)}]`;
    });
    return `  - { station: ${(900 * t).toFixed(2)}, outline: [${outline.join(', ')}] }`;
  });
  return withHull(['sections:', ...rows]);
}

function profile(points: number): string {
  const all = Array.from({ length: points }, (_, i) => {
    const t = i / (points - 1);
    return `[${(900 * t).toFixed(2)}, ${fullness(t).toFixed(3)}]`;
  });
  return withHull([`profile: [${all.join(', ')}]`, 'height: 54 mm']);
}

function tanks(count: number): string {
  const made = Array.from(
    { length: count },
    (_, i) =>
      `    - { name: tank ${i}, in: dry cylinder, round: 14 mm, station: ${380 + 5 * i} to ${384.5 + 5 * i} mm, height: ${40 + (i % 3) * 15} mm, kind: sealed }`,
  );
  return boatOfParts(20).replace(/ {2}tanks:\n[\s\S]*?(?=^payload)/m, () => textLines(['  tanks:', ...made]));
}

/** The samples, and files as large and as wrong as the format has room for. */
export const longWorks = (): readonly LongWork[] => [
  ...readdirSync('samples')
    .filter(name => name.endsWith('.boat.yaml'))
    .map(name => ({ what: name, text: sample(name), mesh: readFileSync('samples/guillemot-hull.stl') })),
  { what: 'thirty trials', text: withTrials(30, ['surfaced', 'submerged']) },
  { what: 'twenty submerged trials', text: withTrials(20, ['submerged']) },
  { what: '24 tanks', text: tanks(24) },
  { what: '40 sections of 60 points', text: offsets(40, 60) },
  { what: '100 sections of 100 points', text: offsets(100, 100) },
  { what: 'a profile of 500 points', text: profile(500) },
  { what: '400 parts', text: boatOfParts(400) },
  { what: '400 parts, ten trials', text: withTrials(10, ['surfaced'], boatOfParts(400)) },
  { what: '1,000 parts', text: boatOfParts(1000) },
  { what: '1,000 parts, a bracket left out', text: boatOfParts(1000).replace(/(part 500.*)\}/, '$1') },
  { what: '1,000 parts, each unit wrong', text: boatOfParts(1000).replaceAll(/(\d) g,/g, '$1 gz,') },
  {
    what: '9,000 unknown keys',
    text: boatOfParts(20) + textLines(Array.from({ length: 9000 }, (_, i) => `key${i}: 1`)),
  },
  { what: 'out of shape all through', text: textLines(['hull:', ...new Array<string>(2000).fill('  - name:a{')]) },
  {
    what: 'a hull of 480,000 triangles',
    text: withHull(['mesh: { file: hull.stl }']),
    mesh: binaryStl(hullMesh(480_000), 1000),
  },
];
