import { createDescriber } from '../../schema/describe.ts';
import { analyse } from '../../server/core/analysis/analyse.ts';
import { PICTURES, trimSheet } from '../../server/core/drawing/trimSheet.ts';
import { readMeshFile } from '../../server/core/meshFiles/readMeshFile.ts';
import { binaryStl } from '../helpers/stl.ts';
import { boatOfParts } from './boatOfParts.ts';
import { hullMesh } from './hullMesh.ts';
import { firstTime, timesOf } from './measure.ts';

/*
 * What the pictures of a boat cost, against the 16 ms of a frame that those have which are drawn at every keystroke. It
 * asserts nothing; run alone with `node test/helpers/run.mjs test/benchmark/drawing.ts`.
 */

const describer = createDescriber();
/** Drawn when the typing rests. */
const SLOW = ['righting-lever', 'polygon', 'uncertainty', 'trials'];
const quick = PICTURES.filter(id => !SLOW.includes(id));

function line(what: string, call: () => unknown): void {
  const first = firstTime(call);
  const { clock, processor } = timesOf(call, 600);
  console.log(
    `  ${what.padEnd(44)} warm ${clock.toFixed(2)} ms, of processor time ${processor.toFixed(2)} ms, first ${first.toFixed(0)} ms`,
  );
}

const file = readMeshFile(binaryStl(hullMesh(100_000), 1000));
const meshed = boatOfParts(60).replace(/profile: \[\[0, 0\].*\n.*/, 'mesh: { file: hull.stl }');
for (const [what, text] of [
  ['60 parts', boatOfParts(60)],
  ['200 parts', boatOfParts(200)],
  ['60 parts and a shell of 100,000 triangles', meshed],
] as const) {
  const analysis = analyse(text, describer, undefined, () => file);
  console.log(what);
  line('all that is drawn at every keystroke', () => trimSheet(analysis, { only: quick }));
  for (const id of PICTURES) line(id, () => trimSheet(analysis, { only: [id] }));
}
