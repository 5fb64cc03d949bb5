import { readFileSync } from 'node:fs';
import type { MeshFile, MeshLookup } from '../../server/core/meshFiles/meshFile.ts';
import { readMeshSteps } from '../../server/core/meshFiles/readMeshFile.ts';
import { inSteps, type Working } from '../../server/core/steps/steps.ts';
import { createBoatService } from '../../server/service/service.ts';
import { textLines } from '../helpers/boatText.ts';
import { binaryStl } from '../helpers/stl.ts';
import { meshXml, threeMf } from '../helpers/threeMf.ts';
import { boatOfParts } from './boatOfParts.ts';
import { hullMesh } from './hullMesh.ts';

/*
 * How long the server is held by the longest piece of each long work, cold, as it is after a file was opened. Nothing
 * should hold it for more than 50 ms on a quiet machine. It asserts nothing.
 */

const service = createBoatService();
const describe = (what: string, times: readonly number[]): void => {
  const longest = Math.max(...times);
  const total = times.reduce((sum, time) => sum + time, 0);
  const long = times.filter(time => time > 50).length;
  console.log(
    `  ${what.padEnd(44)} ${longest.toFixed(0).padStart(6)} ms the longest of ${String(times.length).padStart(5)}, ${long} over 50 ms, ${total.toFixed(0)} ms in all`,
  );
};

function timed<T>(times: number[], run: () => T): T {
  const start = performance.now();
  const value = run();
  times.push(performance.now() - start);
  return value;
}

/** All of a work, step by step. */
function stepped<T>(what: string, work: Working<T>): T {
  const times: number[] = [];
  // Ends: a step is a stretch of work, and the work ends.
  while (!timed(times, () => work.step()));
  describe(what, times);
  return work.all();
}

/** A file opened, its uncertainties and trials settled, its corrections found, its report and sheets made: each as the server does it. */
function opened(what: string, text: string, meshes?: MeshLookup): void {
  console.log(`\n${what}`);
  const read = stepped('read', service.read(text, undefined, meshes));
  const analysis = stepped('floated', service.conclude(read));
  stepped('what lies where it cannot', analysis.file.places.found);
  stepped('in motion', analysis.said.inMotion);
  stepped('settled', analysis.settled);
  stepped('corrections', analysis.corrections);
  stepped('offers', analysis.offers);
  stepped('report', service.reports(analysis));
  stepped('sheet', service.sheet(analysis, { proposal: 0, width: 880, names: 'few' }));
  stepped('print', service.printedSheet(analysis, { paper: 'a4', fileName: null, appendix: true }));
  const again = stepped('a keystroke, read', service.read(`${text}# more`, analysis, meshes));
  stepped('a keystroke, floated', service.conclude(again, analysis));
}

const dunlin = (): string => readFileSync('samples/dunlin.boat.yaml', 'utf8');

/** The sample with so many trials of one condition, each a little different. */
function withTrials(count: number, of: readonly ('surfaced' | 'submerged')[]): string {
  const [head] = dunlin().split(/^trials:.*$/m);
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

function readMesh(what: string, bytes: Uint8Array): MeshFile {
  console.log(`\nMesh of 480,000 triangles, ${what}`);
  return stepped(
    'read and checked',
    inSteps(() => readMeshSteps(bytes)),
  );
}

function mesh(): void {
  const form = hullMesh(480_000);
  readMesh('3MF', threeMf(`<object id="1">${meshXml(form)}</object>`, '<item objectid="1"/>'));
  const file = readMesh('STL', binaryStl(form, 1000));
  opened('A boat with that hull', withHull(['mesh: { file: hull.stl }']), () => file);
}

/** Prints the longest piece of each long work. */
export function steps(): void {
  opened('The sample with trials', dunlin());
  opened('Thirty trials', withTrials(30, ['surfaced', 'submerged']));
  opened('Twenty submerged trials', withTrials(20, ['submerged']));
  opened('24 tanks', tanks(24));
  opened('40 sections of 60 points', offsets(40, 60));
  opened('A profile of 500 points', profile(500));
  opened('1000 parts', boatOfParts(1000));
  opened('1000 parts, a bracket left out', boatOfParts(1000).replace(/(part 500.*)\}/, '$1'));
  opened('A text that is out of shape all through', textLines(new Array(2000).fill('  - name:a{')));
  mesh();
}
