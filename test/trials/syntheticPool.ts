import { createDescriber } from '../../schema/describe.ts';
import type { PartEntry } from '../../schema/hull.ts';
import type { Boat, Compartment } from '../../server/core/boat/boat.ts';
import { readPart } from '../../server/core/boat/readPart.ts';
import type { BoatSource } from '../../server/core/boat/source.ts';
import type { Reading, Trial } from '../../server/core/boat/trial.ts';
import { assembleBodies, emptyCache } from '../../server/core/bodies/assemble.ts';
import { floatSubmerged } from '../../server/core/conditions/submerged.ts';
import { floatSurfaced } from '../../server/core/conditions/surfaced.ts';
import { readSyntax } from '../../server/core/text/reading/syntax.ts';
import { dayBoat } from '../../server/core/trials/pool/dayBoat.ts';
import type { TrialSet } from '../../server/core/trials/pool/trialSet.ts';
import { plain } from '../../server/core/uncertainty/edits.ts';
import { inputsOf } from '../../server/core/uncertainty/inputs.ts';
import { emptyVariations } from '../../server/core/uncertainty/variations.ts';
import { withInputs } from '../../server/core/uncertainty/withInputs.ts';
import { waterAt } from '../builder/figures.ts';
import { floatPlainly } from '../builder/plainFloater.ts';
import { swollen } from '../builder/reshape.ts';
import { readBoat } from '../helpers/atOnce.ts';
import { boatText } from '../helpers/boatText.ts';
import { predictTrial } from '../helpers/predictTrial.ts';
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
      - { name: battery, mass: ${mass(between(0.2, 0.24))} g, station: ${at(between(0.29, 0.3))} mm ± 0.5 mm, offset: 0 mm ± 0.5 mm, height: ${(0.5 * radius).toFixed(1)} mm, in: tube }
      - { name: pump, mass: ${mass(between(0.05, 0.06))} g, station: ${at(between(0.38, 0.39))} mm ± 0.5 mm, offset: 0 mm ± 0.5 mm, height: ${(0.9 * radius).toFixed(1)} mm, in: tube }
      - { name: radio, mass: ${mass(between(0.04, 0.05))} g, station: ${at(between(0.61, 0.63))} mm ± 0.5 mm, offset: 0 mm ± 0.5 mm, height: ${(0.9 * radius).toFixed(1)} mm, in: tube }
      - { name: motor, mass: ${mass(between(0.1, 0.12))} g, station: ${at(between(0.67, 0.69))} mm ± 0.5 mm, offset: 0 mm ± 0.5 mm, height: ${(0.7 * radius).toFixed(1)} mm, in: tube }
      - { name: ballast, mass: ${mass(0.3)} g, station: ${at(0.45)} mm ± 0.5 mm, offset: 0 mm ± 0.5 mm, height: ${(0.25 * radius).toFixed(1)} mm, in: tube }
    trials:
      - { condition: surfaced, date: one, marks: [{ station: ${at(0.12)} mm, height: 40 mm ± 1 mm }, { station: ${at(0.78)} mm, height: 40 mm ± 1 mm }], heel: 0° }
      - { condition: submerged, date: one, fill: 50 %, trim: 0°, heel: 0° }
      - { condition: inclining, date: one, shifts: [{ mass: ${mass(0.02)} g, moved: 20 mm, heel: 1° }, { mass: ${mass(0.02)} g, moved: -20 mm, heel: 1° }] }
      - condition: surfaced
        date: two
        aboard: [{ name: weight, mass: ${mass(0.02)} g, station: ${at(0.7)} mm, offset: 10 mm, height: ${radius.toFixed(1)} mm, in: tube }]
        marks: [{ station: ${at(0.12)} mm, height: 40 mm ± 1 mm }, { station: ${at(0.45)} mm, height: 40 mm ± 1 mm }, { station: ${at(0.78)} mm, height: 40 mm ± 1 mm }]
        heel: 0°
      - { condition: submerged, date: two, fill: 50 %, trim: 0° }
  `;
}

/** What is wrong with a boat, or with what was read of it. */
export type Wrong = 'slip' | 'dry' | 'wet' | 'elsewhere' | 'volume';

/** A pool: what the builder has, and what is true. */
export interface SyntheticPool {
  readonly trialSet: TrialSet;
  readonly wrong: readonly Wrong[];
  readonly truth: Boat;
  readonly figures: Figures;
  /** Of the weight that nobody wrote down, SI; null for none. */
  readonly weight: { readonly mass: number; readonly station: number } | null;
  /** The part that lies elsewhere, and how far aft, m. */
  readonly strayed: { readonly name: string; readonly by: number } | null;
  /** How much more the tube displaces than written, as a part; null where that is no more wrong than its figures say. */
  readonly swollen: number | null;
  readonly slip: Reading | null;
}

/** Headline figures, SI. */
export type Figures = Readonly<
  Record<'draft' | 'trim' | 'heel' | 'gm' | 'fill' | 'subTrim' | 'subHeel' | 'bg', number>
>;

/** Readings of a boat, one for each of a trial; null where it could not show it. */
type Reader = (boat: Boat, trial: Trial) => readonly (number | null)[];

const readByCode: Reader = (boat, trial) => predictTrial(boat, trial, emptyCache());

/** By other means than the code under test; weights that are shifted by it all the same. */
const readPlainly: Reader = (boat, trial) => {
  if (trial.condition === 'inclining') return readByCode(boat, trial);
  const { afloat, hanging } = floatPlainly(dayBoat(boat, trial));
  return trial.readings.map(reading => {
    if (trial.condition === 'submerged')
      return reading.of === 'fill' || reading.of === 'trim' || reading.of === 'heel'
        ? (hanging?.[reading.of] ?? null)
        : null;
    if (reading.of === 'mark') return afloat && waterAt(afloat, reading.station, boat.length);
    return reading.of === 'heel' ? (afloat?.heel ?? null) : null;
  });
};

/**
 * Draws a boat, lets every figure of it be off by its uncertainty, does to it what is wrong, and reads it in the pool with noise.
 * Null where that boat would sink, fall over or not hang neutral. `isPlain`: it floats by other means than the code under test.
 */
export function drawPool(random: Seeded, wrong: readonly Wrong[], isPlain = false): SyntheticPool | null {
  const { even, normal } = random;
  const { source, trials } = readBoat(readSyntax(randomText(random)), describer, kept);
  const variations = emptyVariations();
  const inputs = inputsOf(source, variations);
  const drawn = new Map(inputs.map(input => [input, input.value + input.sigma * normal()]));
  const parts = source.payload.map(({ entry }) => entry);
  const part = parts[Math.floor(even() * parts.length)]!;
  const by = (even() < 0.5 ? -1 : 1) * (0.015 + 0.02 * even());
  const strayed = wrong.includes('elsewhere') ? { name: part.name, by } : null;
  if (strayed) {
    const station = inputs.find(({ entryName, noun }) => entryName === part.name && noun === 'station')!;
    drawn.set(station, drawn.get(station)! + by);
  }
  const off = withInputs(source, drawn);
  const unlisted =
    wrong.includes('dry') || wrong.includes('wet') ? hiddenPart(source, wrong.includes('wet'), random) : null;
  const weight = unlisted && readPart(unlisted, ['hidden'], source.around, [])!;
  const swollenBy = wrong.includes('volume') ? (even() < 0.5 ? -1 : 1) * (0.03 + 0.05 * even()) : null;
  const [tube, ...others] = off.compartments as [Compartment, ...Compartment[]];
  const grown: Boat = swollenBy === null ? off : { ...off, compartments: [swollen(tube, 1 + swollenBy), ...others] };
  const truth: Boat = weight ? { ...grown, payload: [...grown.payload, weight] } : grown;
  const read = trials.map(trial => readOff(truth, trial, random, isPlain ? readPlainly : readByCode));
  const figures = figuresOf(truth);
  if (!figures || read.some(trial => trial === null)) return null;
  const good = read.map(trial => trial!);
  const all = good.flatMap(({ readings }) => readings.filter(({ of }) => of === 'mark'));
  const victim = all[Math.floor(even() * all.length)]!;
  const slip: Reading | null = wrong.includes('slip')
    ? { ...victim, value: victim.value + (even() < 0.5 ? -0.01 : 0.01) }
    : null;
  const told = good.map(trial => ({
    ...trial,
    readings: trial.readings.map(reading => (slip && reading === victim ? slip : reading)),
  }));
  return {
    trialSet: { source, inputs, variations, cache: emptyCache(), trials: told },
    wrong,
    truth,
    figures,
    weight: weight && { mass: weight.mass, station: weight.centroid[0] },
    strayed,
    swollen: swollenBy,
    slip,
  };
}

/** Between 1 and 5 % of the boat's mass, anywhere in the tube or in the hull. */
function hiddenPart({ boat, around }: BoatSource, isWet: boolean, { even }: Seeded): PartEntry {
  const whole = assembleBodies(boat, emptyCache()).mass;
  const mass = whole * (0.01 + 0.04 * even());
  const { from, to } = around.shapes.boundsOf(boat.compartments[0]!.form);
  const at = (axis: 0 | 1 | 2, margin: number) =>
    plain(from[axis] + (to[axis] - from[axis]) * (margin + (1 - 2 * margin) * even()));
  const place = { station: at(0, 0.05), offset: at(1, 0.2), height: at(2, 0.2) };
  const density = Math.exp(Math.log(300) + even() * Math.log(11340 / 300));
  return isWet
    ? { name: 'hidden', mass: plain(mass), volume: plain(mass / density), ...place }
    : { name: 'hidden', mass: plain(mass), in: 'tube', ...place };
}

function figuresOf(boat: Boat): Figures | null {
  const bodies = assembleBodies(boat, emptyCache());
  const surfaced = floatSurfaced(bodies, boat.length);
  const submerged = floatSubmerged(bodies);
  if (surfaced.status !== 'afloat' || submerged.status !== 'neutral' || !submerged.stable) return null;
  const { draftBow, draftStern, attitude, gm } = surfaced;
  return {
    draft: (draftBow + draftStern) / 2,
    trim: attitude.trim,
    heel: attitude.heel,
    gm,
    fill: submerged.fill,
    subTrim: submerged.trim,
    subHeel: submerged.heel,
    bg: submerged.bg,
  };
}

function readOff(boat: Boat, trial: Trial, { normal }: Seeded, read: Reader): Trial | null {
  const shown = read(boat, trial);
  if (shown.some(value => value === null)) return null;
  const isLyingOver = trial.readings.some(({ of }, i) => (of === 'heel' || of === 'trim') && Math.abs(shown[i]!) > 0.5);
  const fill = trial.readings.findIndex(({ of }) => of === 'fill');
  if (isLyingOver || (fill >= 0 && (shown[fill]! < 0 || shown[fill]! > 1))) return null;
  const readings = trial.readings.map(
    (reading, i): Reading => ({ ...reading, value: shown[i]! + reading.sigma * normal() }),
  );
  return { ...trial, readings };
}
