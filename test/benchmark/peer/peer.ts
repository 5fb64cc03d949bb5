import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { resolve } from 'node:path';
import { SERVER_PROCESS } from '../../../client/serverProcess.ts';
import { pathKey } from '../../../schema/path.ts';
import { binaryStl } from '../../helpers/stl.ts';
import { boatOfParts } from '../boatOfParts.ts';
import { measureDrag } from '../drag/drag.ts';
import { hullMesh } from '../hullMesh.ts';
import { keystrokeMedians } from '../keystroke.ts';
import { inBlocks, inside } from '../typed.ts';
import { measure } from './session.ts';
import { PEER, setUpPeer } from './setUp.ts';
import { commandsOf, startsOf } from './starts.ts';
import type { Contender } from './talk.ts';

/*
 * What an edit costs, side by side with a general YAML language server that holds the same file against our published
 * JSON Schema: both over stdio, the same edits in turn in one run, medians. It asserts nothing.
 */

interface Row {
  readonly what: string;
  readonly goal: string;
  readonly aim: string;
  readonly measured: string;
  readonly times: string;
}

/** Prints the table and writes it to `test/BENCHMARK.md`. */
export async function againstPeer(): Promise<void> {
  const peer = setUpPeer();
  execFileSync(process.execPath, ['esbuild.mjs'], { stdio: 'inherit' });
  const ours: Contender = {
    name: 'ours',
    script: resolve('dist/server.cjs'),
    languageId: 'boat',
    started: SERVER_PROCESS,
  };
  const theirs: Contender = { name: 'theirs', script: peer, languageId: 'yaml', started: { execArgv: [], env: {} } };
  const both = [ours, theirs];
  const boat = (count: number): string => inBlocks(boatOfParts(count));
  const load = loadavg()[0]!;

  const [aStart, bStart] = pair(await startsOf(both, boat(20)));
  const [a20, b20] = pair(await measure(both, { text: boat(20) }));
  const [a200, b200] = pair(await measure(both, { text: boat(200) }));
  const [a400, b400] = pair(await measure(both, { text: boat(400) }));
  const [aMesh, bMesh] = pair(await measure(both, meshedFile(boat(200))));
  const medians = keystrokeMedians(inside(boatOfParts(200)));
  const [bare, edit] = [medians[0]![1], medians.at(-1)![1]];
  const { command, nothing } = commandsOf([resolve('dist/trimwright.cjs'), 'check', 'samples/curlew.boat.yaml']);
  const drag = await measureDrag(ours, boat(60), pathKey(['payload', 6]));

  const row = (what: string, goal: string, aim: string, a: number, b: number, unit = 'ms'): Row => {
    const digits = (value: number): string => value.toFixed(value < 10 ? 1 : 0);
    return { what, goal, aim, measured: (a / b).toFixed(2), times: `${digits(a)} / ${digits(b)} ${unit}` };
  };
  const rows: readonly Row[] = [
    row('edit to diagnostics, 20 entries', '0.9', '0.5', a20.diagnostics, b20.diagnostics),
    row('the same, 200', '0.3', '0.12', a200.diagnostics, b200.diagnostics),
    row('the same, 400', '0.2', '0.08', a400.diagnostics, b400.diagnostics),
    row('the same, 200 and a hull of 100,000 triangles', '0.6', '0.4', aMesh.diagnostics, bMesh.diagnostics),
    row('processor time of an edit and what follows, 20', '', '', a20.processor, b20.processor),
    row('the same, 200', '0.8', '0.5', a200.processor, b200.processor),
    row('the same, 400', '', '', a400.processor, b400.processor),
    row('an edit without uncertainties / a bare parse, 200', '0.35', '0.12', edit, bare),
    row('hover after an edit, 200', '0.3', '0.15', a200.hover, b200.hover),
    row('completion after an edit, 200', '0.1', '0.05', a200.completion, b200.completion),
    row('edit to diagnostics, ours, 400 entries / 20', '3', '2', a400.diagnostics, a20.diagnostics),
    row('process to initialize', '0.7', '0.5', aStart.initialized, bStart.initialized),
    row('process to first diagnostics, 20', '0.9', '0.6', aStart.diagnostics, bStart.diagnostics),
    row('memory, 200', '1.0', '0.8', a200.memory, b200.memory, 'MB'),
    row('memory, 400', '1.0', '0.8', a400.memory, b400.memory, 'MB'),
    row('`check` of a sample, less 100 ms / `node -e 0`', '1.3', '', Math.max(0, command - 100), nothing),
    row('frames of a drag in time, 60 parts / nothing held', '0.95', '0.99', drag.frames, drag.framesOfNothing, '%'),
    row('the part under the pointer, of those frames', '0.95', '0.99', drag.followed, 100, '%'),
    row('a move until its frame is drawn / nothing held', '', '', drag.work, drag.workOfNothing),
    row('figures of a drag / a frame of 16 ms', '3', '1', drag.figures, 16),
  ];
  const text = page(rows, load);
  writeFileSync('test/BENCHMARK.md', text);
  console.log(text);
}

/** Ours and theirs, said as soon as they are there: the whole takes minutes. */
function pair<T>([ours, theirs]: readonly T[]): readonly [T, T] {
  console.log('ours', ours, 'theirs', theirs);
  return [ours!, theirs!];
}

/** The boat with its hull from a mesh file. */
const meshedFile = (text: string) => ({
  text: text.replace(/profile: \[\[0, 0\].*\n.*/, 'mesh: { file: hull.stl }'),
  mesh: binaryStl(hullMesh(100_000), 1000),
});

function page(rows: readonly Row[], load: number): string {
  const [first] = cpus();
  const table = rows.map(
    ({ what, goal, aim, measured, times }) => `| ${what} | ${goal} | ${aim} | ${measured} | ${times} |`,
  );
  return `# What a keystroke costs

\`npm run benchmark -- peer\` writes this. Ours against ${PEER} without its wait of 200 ms, which holds the same file
against our JSON Schema: both over stdio, ours started as the extension starts it, the same edits in turn in one run, medians of thirty after the first thirty. A boat
with so many payload entries in block style, a digit more or less in the mass in the middle. A drag is one in headless Chromium that paints without a
graphics card, with both side elevations in sight; the same moves of the pointer with nothing held tell what the machine
has to give.

${cpus().length} cores (${first?.model.trim() ?? 'unknown'}), Node ${process.versions.node}; load at the start ${load.toFixed(1)}, at the end ${loadavg()[0]!.toFixed(1)}.

| ratio | goal | aim | measured | ours / theirs |
| --- | --- | --- | --- | --- |
${table.join('\n')}
`;
}
