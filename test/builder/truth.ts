import type { Boat, Compartment, Part } from '../../server/core/boat/boat.ts';
import type { Vec3 } from '../../server/core/geometry/form/vector.ts';
import { inputsOf } from '../../server/core/uncertainty/inputs.ts';
import { withInputs } from '../../server/core/uncertainty/withInputs.ts';
import { boatText } from '../helpers/boatText.ts';
import type { Seeded } from '../helpers/seeded.ts';
import { readText } from './arrange.ts';
import { type FamilyBoat, span } from './family.ts';
import { moved, stretched, swollen } from './reshape.ts';

/** What of the boat is not as its file has it, apart from uncertainties. */
interface UnlistedWeight {
  readonly words: string;
  readonly kind: 'unlisted dry' | 'unlisted wet' | 'elsewhere' | 'hull volume';
}

/** The boat as it really is. */
export interface Truth {
  readonly boat: Boat;
  readonly hidden: readonly UnlistedWeight[];
  /** How much lighter or heavier lead and foam are than the file has it, as a factor. */
  readonly densities: Readonly<Record<string, number>>;
}

const UNLISTED = 'something unlisted';

/**
 * Draws the true boat about its file: every uncertain input by its uncertainty; in 2 of 5 something that nobody wrote down; in
 * 1 of 5 a part 15 to 35 mm from where the file has it; in 1 of 10 a hull that displaces up to 2 % more or less.
 * `differs` false: the file is the truth.
 */
export function drawTruth({ text, mass, plan }: FamilyBoat, random: Seeded, differs = true): Truth {
  const hidden: UnlistedWeight[] = [];
  const asFiled = readText(text);
  if (!differs) return { boat: asFiled.boat, hidden, densities: {} };
  let real = text;
  if (random.even() < 0.4) {
    const made = unlistedEntry(asFiled.boat, mass, plan.radius * 1e-3, random);
    hidden.push(made.hidden);
    real = text.replace(
      /^bays:$/m,
      boatText`
        - ${made.entry}
      bays:`,
    );
  }
  const { source } = readText(real);
  const known = inputsOf(source).filter(({ entryName }) => entryName !== UNLISTED);
  let boat = withInputs(source, new Map(known.map(input => [input, input.value + input.sigma * random.normal()])));
  if (random.even() < 0.2) boat = elsewhere(boat, random, hidden);
  if (random.even() < 0.1) boat = otherVolume(boat, random, hidden);
  return { boat, hidden, densities: { lead: 1 + 0.01 * random.normal(), foam: 1 + 0.05 * random.normal() } };
}

/** 0.3 to 3 % of the boat, 5 g at least and 150 g at most, anywhere in a compartment or out in the water. */
function unlistedEntry(boat: Boat, mass: number, radius: number, random: Seeded) {
  const grams = Math.min(150, Math.max(5, mass * 0.003 * 10 ** random.even()));
  const isDry = random.even() < 0.5;
  const mm = (metres: number) => `${(metres * 1e3).toFixed(1)} mm`;
  const inside = boat.compartments[Math.floor(random.even() * boat.compartments.length)]!;
  const station = isDry ? span(random, ...endsOf(inside, 0.1)) : span(random, 0.06 * boat.length, 0.94 * boat.length);
  const near = 0.3 * radius;
  const place = `station: ${mm(station)}, offset: ${mm(span(random, -near, near))}, height: ${mm(radius * span(random, 0.6, 1.4))}`;
  const size = grams / (1.1 * 8 ** random.even());
  const entry = `{ name: ${UNLISTED}, mass: ${grams.toFixed(1)} g, ${place}, ${isDry ? `in: ${inside.name}` : `volume: ${size.toFixed(2)} ml`} }`;
  const words = `${grams.toFixed(0)} g unlisted ${isDry ? 'dry' : `wet (${size.toFixed(0)} ml)`} at ${mm(station)}`;
  const hidden: UnlistedWeight = { words, kind: isDry ? 'unlisted dry' : 'unlisted wet' };
  return { entry, hidden };
}

/** Stations of a compartment without a share of it at either end, m. */
function endsOf({ form }: Compartment, share: number): readonly [number, number] {
  if (form.shape !== 'revolved') throw new Error('the compartments of the family are round');
  const [from, to] = [form.profile[0]![0] + form.origin[0], form.profile.at(-1)![0] + form.origin[0]];
  return [from + share * (to - from), to - share * (to - from)];
}

function elsewhere(boat: Boat, random: Seeded, hidden: UnlistedWeight[]): Boat {
  const movable = boat.payload.filter(({ name, mass }) => name !== UNLISTED && name !== 'keel lead' && mass > 0.02);
  const part = movable[Math.floor(random.even() * movable.length)];
  if (!part) return boat;
  const by = span(random, 0.015, 0.035) * (random.even() < 0.5 ? -1 : 1);
  hidden.push({ words: `${part.name} ${(by * 1e3).toFixed(0)} mm aft`, kind: 'elsewhere' });
  return { ...boat, payload: boat.payload.map(each => (each === part ? moved(part, [by, 0, 0]) : each)) };
}

function otherVolume(boat: Boat, random: Seeded, hidden: UnlistedWeight[]): Boat {
  const factor = 1 + span(random, -0.02, 0.02);
  hidden.push({ words: `compartments ${((factor - 1) * 100).toFixed(1)} % larger`, kind: 'hull volume' });
  return { ...boat, compartments: boat.compartments.map(each => swollen(each, factor)) };
}

/*
 * How well the hand does what the file says (common practice, no source): pieces are cut to 1 %, laid to 1 mm, in their
 * height to half of that, for they lie on something; what is slid goes by a ruler along a mark, half a millimetre off.
 */
const CUT = 0.01;
const LAID: Vec3 = [1e-3, 1e-3, 0.5e-3];
const SLID = 0.5e-3;

/** What is done to the file's boat between two versions is done to the true one. */
export function follow(truth: Truth, before: Boat, after: Boat, random: Seeded): Truth {
  const { boat, densities } = truth;
  const named = (parts: readonly Part[], name: string) => parts.find(part => part.name === name);
  const taken = before.payload.filter(({ name }) => !named(after.payload, name));
  const kept = boat.payload.filter(({ name }) => !taken.some(part => part.name === name));
  const payload = kept.map(part => {
    const [was, is] = [named(before.payload, part.name), named(after.payload, part.name)];
    if (!was || !is) return part;
    // What is recut is made and laid anew; what is only moved keeps its mass.
    if (is.mass !== was.mass) return fitted(is, densities, random);
    const slid = (axis: 0 | 1 | 2): number => {
      const by = is.centroid[axis] - was.centroid[axis];
      return by === 0 ? 0 : by + SLID * random.normal();
    };
    const by: Vec3 = [slid(0), slid(1), slid(2)];
    return by.every(step => step === 0) ? part : moved(part, by);
  });
  const added = after.payload.filter(({ name }) => !named(before.payload, name));
  return { ...truth, boat: { ...boat, payload: [...payload, ...added.map(part => fitted(part, densities, random))] } };
}

/** A piece as it comes out under the saw and where the hand lays it. Lead is weighed, foam is cut to its length. */
function fitted(part: Part, densities: Truth['densities'], random: Seeded): Part {
  const cut = 1 + CUT * random.normal();
  const density = densities[part.material ?? ''] ?? 1;
  const [mass, volume] = part.material === 'foam' ? [cut * density, cut] : [cut, cut / density];
  const off: Vec3 = [LAID[0] * random.normal(), LAID[1] * random.normal(), LAID[2] * random.normal()];
  return stretched(moved(part, off), mass, volume);
}
