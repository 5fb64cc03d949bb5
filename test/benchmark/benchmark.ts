import { createDescriber } from '../../schema/describe.ts';
import { partSchema } from '../../schema/hull.ts';
import { analyse } from '../../server/core/analysis/analyse.ts';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import type { Boat } from '../../server/core/boat/boat.ts';
import type { BoatSource } from '../../server/core/boat/source.ts';
import { assembleBodies, type Bodies, emptyCache } from '../../server/core/bodies/assemble.ts';
import { loadedBoat, surfacedBoat } from '../../server/core/conditions/load.ts';
import { inBoth } from '../../server/core/conditions/loadingCondition.ts';
import { rightingSteps } from '../../server/core/conditions/rightingLever.ts';
import { stabilitySteps } from '../../server/core/conditions/stabilityAfloat.ts';
import { floatSubmerged } from '../../server/core/conditions/submerged.ts';
import { floatSurfaced } from '../../server/core/conditions/surfaced.ts';
import { sizeTanks } from '../../server/core/conditions/tankSizing.ts';
import { transitOf, transitSteps } from '../../server/core/conditions/transit.ts';
import { proposeCorrections } from '../../server/core/corrections/propose.ts';
import { FIGURES } from '../../server/core/figures/table.ts';
import { addImmersed, emptyImmersion } from '../../server/core/geometry/cut/immersion.ts';
import { solidOf, wallOf } from '../../server/core/geometry/cut/solids.ts';
import type { Form } from '../../server/core/geometry/form/form.ts';
import type { Vec3 } from '../../server/core/geometry/form/vector.ts';
import { judge, judgeMotion } from '../../server/core/judges/judge.ts';
import { wantedOf } from '../../server/core/planning/wanted.ts';
import { textReport } from '../../server/core/report/textReport.ts';
import { finish, inSteps } from '../../server/core/steps/steps.ts';
import { readSyntax } from '../../server/core/text/reading/syntax.ts';
import { otherEquilibria, readBoat, rightingCurve } from '../helpers/atOnce.ts';
import { boatOfParts } from './boatOfParts.ts';
import { hullMesh } from './hullMesh.ts';
import { keystroke } from './keystroke.ts';
import { firstTime, logSlope, medianTime, timesOf } from './measure.ts';
import { plainLoop } from './plainLoop.ts';

/*
 * What the analysis costs, and the ratio to what is aimed at. It asserts nothing: machines differ and
 * cores are shared. Run alone with `npm run benchmark`;
 * with `npm run benchmark -- peer` it is held against a general YAML server instead, with `-- waits` it prints for
 * how long the server is held at a time, and with `-- rest` what is there before anybody types.
 */

const describer = createDescriber();

const line = (what: string, value: string): void => console.log(`  ${what.padEnd(52)} ${value}`);
const time = (what: string, call: () => unknown): number => {
  const ms = medianTime(call);
  line(what, `${ms < 0.1 ? ms.toFixed(4) : ms.toFixed(2)} ms`);
  return ms;
};
/**
 * Times of a call against what is aimed at, and in plain loops over 100,000 triangles (ms of processor time each), which
 * take a millisecond on the machine that the aims are for.
 */
function against(what: string, aim: number, plain: number, call: () => unknown): void {
  const first = firstTime(call);
  const { clock, processor } = timesOf(call, 1000);
  line(`${what}, aim ${aim} ms`, `${clock.toFixed(1)} ms by the clock, ${(clock / aim).toFixed(2)} of the aim`);
  line('', `${processor.toFixed(1)} ms of processor time, ${(processor / plain).toFixed(1)} plain loops`);
  line('', `${first.toFixed(0)} ms at the first call`);
}

const sourceFrom = (text: string): BoatSource => readBoat(readSyntax(text), describer).source;
const boatFrom = (text: string): Boat => sourceFrom(text).boat;

/** The boat with its first shell's form in place of the tabulated one. */
const withHull = (boat: Boat, form: Form): Boat => ({
  ...boat,
  shells: boat.shells.map((shell, i) => (i === 0 ? { ...shell, form, endsClosed: true } : shell)),
});

/** What every keystroke needs, from bodies in the cache: both conditions, what lies between them, and findings. */
function conditions(boat: Boat, cache: ReturnType<typeof emptyCache>): unknown {
  return conditionsOf(boat, assembleBodies(boat, cache));
}

function conditionsOf(boat: Boat, bodies: Bodies) {
  const surfaced = floatSurfaced(bodies, boat.length);
  const submerged = floatSubmerged(bodies);
  const levers = inSteps(() => rightingSteps(surfacedBoat(bodies)));
  const toJudge = {
    boat,
    conditions: inBoth(surfaced, submerged),
    transit: inSteps(() => transitSteps(bodies, surfaced, submerged, boat.length)),
    stability: inSteps(() => stabilitySteps(bodies, surfaced, levers)),
    tankSizes: submerged.status === 'neutral' ? sizeTanks(bodies, submerged.fill) : [],
    blows: [],
    wanted: wantedOf(boat, bodies),
  };
  return { surfaced, submerged, findings: [...judge(toJudge, FIGURES), ...finish(judgeMotion(toJudge))] };
}

/** Every figure of a report: the same with the righting levers of both conditions. */
function figures(boat: Boat, cache: ReturnType<typeof emptyCache>): unknown {
  const bodies = assembleBodies(boat, cache);
  const { submerged, findings } = conditionsOf(boat, bodies);
  if (submerged.status !== 'neutral') throw new Error('The boat must float and dive.');
  return [
    findings,
    rightingCurve(surfacedBoat(bodies)),
    rightingCurve(loadedBoat(bodies, submerged.fill, 'submerged')),
  ];
}

function pieces(boat: Boat, source: BoatSource): void {
  time('bodies, all made anew', () => assembleBodies(boat, emptyCache()));
  const cache = emptyCache();
  const bodies = assembleBodies(boat, cache);
  time('bodies, from the shelf', () => assembleBodies(boat, cache));
  time('surfaced', () => floatSurfaced(bodies, boat.length));
  time('submerged', () => floatSubmerged(bodies));
  const surfaced = floatSurfaced(bodies, boat.length);
  const submerged = floatSubmerged(bodies);
  if (surfaced.status !== 'afloat' || submerged.status !== 'neutral') throw new Error('The boat must float and dive.');
  time('transit, 25 fills', () => transitOf(bodies, surfaced, submerged, boat.length));
  time('other rests', () => otherEquilibria(surfacedBoat(bodies), surfaced.up));
  time('righting levers surfaced, 73 heels', () => rightingCurve(surfacedBoat(bodies)));
  time('righting levers submerged', () => rightingCurve(loadedBoat(bodies, submerged.fill, 'submerged')));
  time('corrections', () =>
    finish(
      proposeCorrections({
        boat,
        filed: boat,
        bodies,
        surfaced,
        submerged,
        others: [],
        source,
        uncertainties: null,
        readSoFar: 'nowhere',
        cache,
        schema: partSchema(boat.units),
      }),
    ),
  );
}

function report200(): void {
  const text = boatOfParts(200);
  const boat = boatFrom(text);
  console.log('\n200 parts');
  const syntax = readSyntax(text);
  time('parse', () => readSyntax(text));
  const read = readBoat(syntax, describer);
  time('read, all entries anew', () => readBoat(syntax, describer));
  time('read, entries kept', () => readBoat(syntax, describer, read.kept));
  pieces(boat, sourceFrom(text));
  const analysis = analyse(text, describer);
  time('the report as text', () => textReport(analysis));
  time('text to report, nothing kept', () => textReport(analyse(text, describer)));
  time('text to report, after a change of one mass', retype(text, analysis));
  console.log('\n200 parts and a hull of 100,000 triangles');
  pieces(withHull(boat, hullMesh(100_000)), sourceFrom(boatOfParts(200)));
}

/**
 * Warm: bodies are in the cache, as they are at every keystroke, but everything that follows from them is figured anew.
 * The first call makes them, and sorts the mesh: once for each file.
 */
function wholeBoat(): void {
  console.log('\nWhole boat');
  const boat = boatFrom(boatOfParts(200));
  const mesh = hullMesh(100_000);
  const meshed = withHull(boat, mesh);
  const { processor: plain } = timesOf(() => plainLoop(mesh, 0.04), 400);
  line('a plain loop over 100,000 triangles, for scale', `${plain.toFixed(2)} ms of processor time`);
  for (const [what, of, aim] of [
    ['200 parts', boat, 10],
    ['with a mesh of 100,000 triangles', meshed, 25],
  ] as const) {
    const cache = emptyCache();
    against(what, aim, plain, () => conditions(of, cache));
    against(`${what}, levers`, aim, plain, () => figures(of, cache));
  }
}

/** One mass changed, there and back again. */
function retype(text: string, first: Analysis): () => unknown {
  const other = text.replace('mass: 640 g', 'mass: 641 g');
  let analysis = first;
  let turn = 0;
  return () => {
    turn++;
    analysis = analyse(turn % 2 === 0 ? text : other, describer, analysis);
    return textReport(analysis);
  };
}

function slopes(): void {
  console.log('\nCost against size (slope of log time over log size; 1 is linear)');
  const counts = [25, 50, 100, 200, 400];
  const overParts = counts.map(count => {
    const boat = boatFrom(boatOfParts(count));
    const cache = emptyCache();
    return [count, time(`conditions of ${count} parts`, () => conditions(boat, cache))] as const;
  });
  line('slope over parts', logSlope(overParts).toFixed(2));
  const base = boatFrom(boatOfParts(200));
  const triangles = [6_000, 12_000, 25_000, 50_000, 100_000, 200_000];
  const overTriangles = triangles.map(count => {
    const form = hullMesh(count);
    const boat = withHull(base, form);
    const cache = emptyCache();
    return [
      count,
      time(`conditions, hull of ${count.toLocaleString('en')} triangles`, () => conditions(boat, cache)),
    ] as const;
  });
  line('slope over triangles, conditions', logSlope(overTriangles).toFixed(2));
  const making = triangles.map(count => {
    const form = hullMesh(count);
    return [
      count,
      time(`making the body of ${count.toLocaleString('en')} triangles`, () => wallOf(form, { endsClosed: true })),
    ] as const;
  });
  line('slope over triangles, making the body', logSlope(making).toFixed(2));
}

/** A body that the surface misses costs a comparison, whatever it is made of. */
function dryBodies(): void {
  console.log('\nOne cut of one body');
  const level: Vec3 = [0.02, -0.01, Math.sqrt(1 - 0.0005)];
  const sums = emptyImmersion();
  const bodies = [
    ['100,000 triangles', solidOf(hullMesh(100_000))],
    [
      'a cylinder',
      solidOf({
        shape: 'revolved',
        origin: [0, 0, 0.05],
        axis: [1, 0, 0],
        profile: [
          [0, 0.04],
          [0.5, 0.04],
        ],
      }),
    ],
    ['a ball', solidOf({ shape: 'ball', centre: [0.4, 0, 0.05], radius: 0.03 })],
  ] as const;
  for (const [what, body] of bodies) {
    const [lowest, highest] = body.extent(level);
    const [below, across, above] = [lowest - 0.01, (lowest + highest) / 2, highest + 0.01].map(h =>
      medianTime(() => {
        for (let i = 0; i < 100; i++) addImmersed(body, level, h, sums);
      }, 150),
    );
    line(`${what}: dry, cut, wholly wet`, [below, across, above].map(ms => `${(10 * ms!).toFixed(2)} µs`).join(', '));
  }
}

if (process.argv.includes('rest')) await (await import('./atRest.ts')).atRest();
else if (process.argv.includes('waits'))
  await (await import('./waits.ts')).waits(process.argv.slice(process.argv.indexOf('waits') + 1)[0]);
else if (process.argv.includes('peer')) await (await import('./peer/peer.ts')).againstPeer();
else for (const part of [keystroke, wholeBoat, report200, slopes, dryBodies]) part();
