import { createDescriber } from '../../schema/describe.ts';
import { analyse } from '../../server/core/analysis/analyse.ts';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { readMeshFile } from '../../server/core/meshFiles/readMeshFile.ts';
import { finish } from '../../server/core/steps/steps.ts';
import { uncertaintySteps } from '../../server/core/uncertainty/uncertainties.ts';
import { emptyVariations } from '../../server/core/uncertainty/variations.ts';
import { binaryStl } from '../helpers/stl.ts';
import { boatOfParts } from './boatOfParts.ts';
import { hullMesh } from './hullMesh.ts';
import { firstTime, timesOf } from './measure.ts';

/*
 * What the uncertainties of a boat cost: all anew, and after a keystroke that changed one part. It asserts nothing; run alone with
 * `node test/helpers/run.mjs test/benchmark/uncertainties.ts`.
 */

const describer = createDescriber();

function line(what: string, call: () => unknown): void {
  const first = firstTime(call);
  const { clock, processor } = timesOf(call, 600);
  console.log(
    `  ${what.padEnd(44)} warm ${clock.toFixed(1)} ms, of processor time ${processor.toFixed(1)} ms, first ${first.toFixed(0)} ms`,
  );
}

const uncertaintiesAnew = (
  { source, kept, bodies, conditions, scheme }: Analysis,
  variations = emptyVariations(),
): unknown => finish(uncertaintySteps({ source, cache: kept.cache, variations }, bodies, conditions, scheme.figures));

for (const parts of [20, 60, 200]) {
  const analysis = analyse(boatOfParts(parts), describer);
  console.log(`${parts} parts, ${analysis.uncertainties!.inputs.length} inputs`);
  line('all anew', () => uncertaintiesAnew(analysis));
  line('after a keystroke', () => uncertaintiesAnew(analysis, analysis.kept.variations));
}

const file = readMeshFile(binaryStl(hullMesh(100_000), 1000));
const meshed = boatOfParts(60).replace(/profile: \[\[0, 0\].*\n.*/, 'mesh: { file: hull.stl }');
const analysis = analyse(meshed, describer, undefined, () => file);
console.log(`60 parts and a shell of 100,000 triangles, ${analysis.uncertainties!.inputs.length} inputs`);
line('all anew', () => uncertaintiesAnew(analysis));
line('after a keystroke', () => uncertaintiesAnew(analysis, analysis.kept.variations));
