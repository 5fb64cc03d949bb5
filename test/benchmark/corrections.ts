import { createDescriber } from '../../schema/describe.ts';
import { analyse } from '../../server/core/analysis/analyse.ts';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { proposeCorrections } from '../../server/core/corrections/propose.ts';
import { finish } from '../../server/core/steps/steps.ts';
import { type BoatOptions, boatOutOfTrim } from '../helpers/boatsOutOfTrim.ts';
import { medianTime } from './measure.ts';

/*
 * What the corrections of boats with 60 parts and 8 bays cost, warm: the request for code actions, but for a few edits.
 * Run alone with `node test/helpers/run.mjs test/benchmark/corrections.ts`.
 */

const PARTS = 60;
const BAYS = 8;
const BOATS = 12;

const describer = createDescriber();

/** The boat with rods in the flooded hull and small things in the cylinder, until it has so many parts and bays. */
function filledUp(text: string): string {
  const lines = text.split('\n');
  const [payload, bays, stock] = ['payload:', 'bays:', 'stock:'].map(key => lines.indexOf(key));
  const parts = Array.from({ length: PARTS - (bays! - payload! - 1) }, (_, i) => {
    const at = 150 + ((i * 61.8) % 480);
    return i % 2 === 0
      ? `  - { name: rod ${i}, material: acetal, round: 3 mm, station: ${at} to ${at + 9} mm, offset: ${i % 4 === 0 ? 30 : -30} mm, height: ${50 + (i % 30)} mm }`
      : `  - { name: small part ${i}, mass: 0.2 g, station: ${300 + (i % 20)} mm, height: 40 mm, in: dry cylinder }`;
  });
  const more = Array.from(
    { length: BAYS - (stock! - bays! - 1) },
    (_, i) =>
      `  - { name: side ${i}, takes: foam, station: ${260 + 110 * i} to ${340 + 110 * i} mm, offset: -12 to 12 mm, height: 118 to 132 mm }`,
  );
  return [...lines.slice(0, bays!), ...parts, ...lines.slice(bays!, stock!), ...more, ...lines.slice(stock!)].join(
    '\n',
  );
}

function measure(what: string, options: BoatOptions, target: number): void {
  let previous: Analysis | undefined;
  let mended = 0;
  const times: number[] = [];
  for (let seed = 0; seed < BOATS; seed++) {
    previous = analyse(filledUp(boatOutOfTrim(seed, options).text), describer, previous);
    const { boatToTrim } = previous;
    if (boatToTrim?.boat.payload.length !== PARTS || boatToTrim.boat.bays.length !== BAYS) {
      throw new Error(`boat ${seed} must float, with ${PARTS} parts and ${BAYS} bays`);
    }
    const offered = finish(proposeCorrections(boatToTrim));
    if (offered.some(({ condition, left }) => condition === 'both' && left.length === 0)) mended++;
    times.push(medianTime(() => finish(proposeCorrections(boatToTrim)), 200));
  }
  times.sort((a, b) => a - b);
  const [middle, most] = [times[times.length >> 1]!, times.at(-1)!];
  const against = (ms: number) => `${ms.toFixed(1)} ms (${(ms / target).toFixed(2)} of the ${target} ms aimed at)`;
  console.log(`  ${what.padEnd(14)} median ${against(middle)}, slowest ${against(most)}; ${mended} of ${BOATS} mended`);
}

console.log(`\nCorrections of ${BOATS} boats with ${PARTS} parts and ${BAYS} bays`);
measure('strip', {}, 60);
measure('whole pieces', { stock: 'pieces' }, 200);
