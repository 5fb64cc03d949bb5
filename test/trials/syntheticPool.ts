import { createDescriber } from '../../schema/describe.ts';
import { readBoat } from '../../server/core/boat/readBoat.ts';
import type { BoatSource } from '../../server/core/boat/source.ts';
import type { Reading, Trial } from '../../server/core/boat/trial.ts';
import { emptyCache } from '../../server/core/bodies/assemble.ts';
import { readSyntax } from '../../server/core/text/reading/syntax.ts';
import { predictTrial } from '../../server/core/trials/pool/predict.ts';
import type { TrialSet } from '../../server/core/trials/pool/trialSet.ts';
import {
  type UnlistedKey,
  type UnlistedWeight,
  unlistedId,
  withUnlisted,
} from '../../server/core/trials/pool/unlistedWeight.ts';
import { inputsOf } from '../../server/core/uncertainty/inputs.ts';
import { emptyVariations } from '../../server/core/uncertainty/variations.ts';
import { withInputs } from '../../server/core/uncertainty/withInputs.ts';
import { boatText } from '../helpers/boatText.ts';
import type { Seeded } from '../helpers/seeded.ts';

const describer = createDescriber();
/** Schemas are costly to make, so made once. */
const { kept } = readBoat(readSyntax('boat: Any'), describer);

/** A boat of a few closed-form bodies, as its file has it: a tube, a tank, and what it carries. Sizes mm, masses g. */
function randomText({ even }: Seeded): string {
  const between = (least: number, most: number) => least + (most - least) * even();
  const length = between(500, 900);
  const radius = length * between(0.05, 0.06);
  const displaced = (Math.PI * radius ** 2 * 0.7 * length) / 1000;
  const at = (part: number) => (part * length).toFixed(1);
  const mass = (part: number) => (part * displaced).toFixed(1);
  return boatText`
    boat: Pool
    hull:
      length: ${at(1)} mm
      compartments:
        - { name: tube, mass: ${mass(0.16)} g ± 1 g, round: ${(2 * radius).toFixed(1)} mm ± 0.1 mm, station: ${at(0.1)} to ${at(0.8)} mm ± 0.3 mm, offset: 0 mm ± 0.3 mm, height: ${radius.toFixed(1)} mm ± 0.3 mm }
        - { name: sail, mass: ${mass(0.01)} g, box: 20 x 60 mm, station: ${at(0.4)} to ${at(0.5)} mm, offset: 0 mm ± 0.3 mm, height: ${(2 * radius + 20).toFixed(1)} mm ± 0.5 mm }
      tanks:
        - { name: tank, in: tube, round: ${(1.5 * radius).toFixed(1)} mm, station: ${at(0.35)} to ${at(0.53)} mm, height: ${radius.toFixed(1)} mm, kind: piston }
    payload:
      - { name: battery, mass: ${mass(between(0.2, 0.24))} g, station: ${at(between(0.29, 0.3))} mm, offset: 0 mm ± 0.5 mm, height: ${(0.5 * radius).toFixed(1)} mm, in: tube }
      - { name: gear, mass: ${mass(between(0.16, 0.2))} g, station: ${at(between(0.6, 0.61))} mm, offset: 0 mm ± 0.5 mm, height: ${(0.8 * radius).toFixed(1)} mm, in: tube }
      - { name: ballast, mass: ${mass(0.3)} g, station: ${at(0.45)} mm, offset: 0 mm ± 0.5 mm, height: ${(0.25 * radius).toFixed(1)} mm, in: tube }
    trials:
      - { condition: surfaced, marks: [${[0.12, 0.35, 0.6, 0.78].map(part => `{ station: ${at(part)} mm, height: 40 mm }`).join(', ')}], heel: 0°, trim: 0° }
      - condition: surfaced
        aboard: [{ name: weight, mass: ${mass(0.02)} g, station: ${at(0.7)} mm, offset: 10 mm, height: ${radius.toFixed(1)} mm, in: tube }]
        marks: [${[0.12, 0.35, 0.6, 0.78].map(part => `{ station: ${at(part)} mm, height: 40 mm }`).join(', ')}]
        heel: 0°
        trim: 0°
      - { condition: submerged, fill: 50 %, trim: 0°, heel: 0° }
      - { condition: inclining, shifts: [{ mass: ${mass(0.02)} g, moved: 20 mm, heel: 1° }] }
  `;
}

/** A pool: what the builder has, and what is true. */
export interface SyntheticPool {
  readonly trialSet: TrialSet;
  readonly unlisted: UnlistedWeight;
  /** Of the weight that nobody wrote down, SI. */
  readonly truth: Readonly<Record<UnlistedKey, number>>;
  /** Of the inputs, by id. */
  readonly trueInputs: ReadonlyMap<string, number>;
}

/**
 * Draws a boat, lets every figure of it be off by its uncertainty, puts in a weight that nobody wrote down, and reads it in the
 * pool with noise. Null where that boat would sink, fall over or not hang neutral.
 */
export function drawPool(random: Seeded): SyntheticPool | null {
  const { source, trials } = readBoat(readSyntax(randomText(random)), describer, kept);
  const variations = emptyVariations();
  const inputs = inputsOf(source, variations);
  const unlisted = withUnlisted(source)!;
  const drawn = new Map(
    [...inputs, ...unlisted.inputs].map(input => [input, input.value + input.sigma * random.normal()]),
  );
  const volume = unlisted.inputs.find(({ id }) => id === unlistedId('volume'))!;
  drawn.set(volume, Math.max(drawn.get(volume)!, unlisted.leastVolume));
  const real = { ...unlisted.source, boat: withInputs(unlisted.source, drawn) };
  const read = trials.map(trial => readOff(real, trial, random));
  if (read.some(trial => trial === null)) return null;
  const trialSet: TrialSet = { source, inputs, variations, cache: emptyCache(), trials: read.map(trial => trial!) };
  const byId = new Map([...drawn].map(([{ id }, value]) => [id, value]));
  const of = (key: UnlistedKey) => byId.get(unlistedId(key))!;
  const truth = {
    mass: of('mass'),
    volume: of('volume'),
    station: of('station'),
    offset: of('offset'),
    height: of('height'),
  };
  return { trialSet, unlisted, truth, trueInputs: byId };
}

function readOff({ boat }: BoatSource, trial: Trial, { normal }: Seeded): Trial | null {
  const shown = predictTrial(boat, trial, emptyCache());
  if (shown.some(value => value === null)) return null;
  const isLyingOver = trial.readings.some(({ of }, i) => (of === 'heel' || of === 'trim') && Math.abs(shown[i]!) > 0.5);
  const fill = trial.readings.findIndex(({ of }) => of === 'fill');
  if (isLyingOver || (fill >= 0 && (shown[fill]! < 0 || shown[fill]! > 1))) return null;
  const readings = trial.readings.map(
    (reading, i): Reading => ({ ...reading, value: shown[i]! + reading.sigma * normal() }),
  );
  return { ...trial, readings };
}
