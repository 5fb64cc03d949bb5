import type { Boat, Part } from '../../boat/boat.ts';
import { conditionOf } from '../../findings/finding.ts';
import { boundsOf } from '../../geometry/cut/solids.ts';
import type { Steps } from '../../steps/steps.ts';
import { massText } from '../../wording/numbers.ts';
import { heightUp, stationTape } from '../../wording/places.ts';
import { cheapestPieces } from '../balance/program.ts';
import { type BalanceRow, type Scope, scopeOf } from '../balance/row.ts';
import { brokenIn } from '../kinds/isWithin.ts';
import { usualFirst } from '../kinds/usualFirst.ts';
import { anewAs } from '../room/anewAs.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import type { Slot } from '../room/slots.ts';
import { balancesOf } from '../search/balances.ts';

/** Parts of each limit that may be used up. */
const PARTS = [0.5, 0.9] as const;
/** Less is nothing, kg. */
const NOTHING = 1e-4;
/** Up from the lowest point of the hull, as a part of its depth: as low as lead goes. */
const LOW = 0.1;

/**
 * How much weight more or less, and where, would do it, were there a place for it: weight low down in the dry, or what is
 * aboard lighter. Floated by the full model; null where no weights would.
 */
export function* weightAdvice(boatToTrim: BoatToTrim): Steps<string | null> {
  const found = yield* weightsThatDo(boatToTrim, scopeOf(boatToTrim.boat));
  return found && `It would keep every limit with ${weightsWords(found, boatToTrim.boat)}.`;
}

/**
 * The same of weights for each condition of the builder's own that is out, aboard there alone, where all else is within its
 * limits or can be brought there by what is moved or added.
 */
export function* weightThereAdvice(boatToTrim: BoatToTrim): Steps<string | null> {
  const first = yield* usualFirst(boatToTrim);
  if (!first) return null;
  const { done, start } = first;
  const asked: string[] = [];
  for (const { condition } of start.others) {
    if (brokenIn(start).every(finding => conditionOf(finding) !== condition.id)) continue;
    const found = yield* weightsThatDo(start, condition.id);
    if (!found) return null;
    asked.push(`${weightsWords(found, start.boat)}, aboard for “${condition.id}” only`);
  }
  if (asked.length === 0) return null;
  const rest = done ? 'With the other conditions put right first, it' : 'It';
  return `${rest} would keep every limit with ${asked.join(', and ')}.`;
}

function* weightsThatDo(boatToTrim: BoatToTrim, scope: Scope): Steps<readonly Weight[] | null> {
  const { boat } = boatToTrim;
  for (const part of PARTS) {
    yield;
    const weights = weightsFor(boatToTrim, balancesOf(boatToTrim, scope, part)(null), scope);
    if (weights.length === 0) continue;
    const changed = { ...boat, payload: [...boat.payload, ...weights.map((weight, i) => asPart(weight, i, boat))] };
    const isLeft = brokenIn(anewAs(boatToTrim, changed)).some(
      finding => scope === scopeOf(boat) || conditionOf(finding) === scope,
    );
    if (!isLeft) return weights;
  }
  return null;
}

const weightsWords = (weights: readonly Weight[], boat: Boat): string =>
  weights.map(weight => wordsOf(weight, boat)).join(' and ');

interface Weight {
  /** kg; negative: so much less. */
  readonly mass: number;
  readonly at: readonly [station: number, offset: number, height: number];
}

/** One weight more and one less anywhere along the boat, as little as it takes; none where they cannot do it on paper. */
function weightsFor({ boat, bodies }: BoatToTrim, rows: readonly BalanceRow[], scope: Scope): readonly Weight[] {
  const bounds = [...boat.shells, ...boat.compartments].map(({ form }) => boundsOf(form));
  const [floor, roof] = [Math.min(...bounds.map(({ from }) => from[2])), Math.max(...bounds.map(({ to }) => to[2]))];
  const half = Math.max(0, ...bounds.map(({ to }) => to[1])) / 2;
  const more = anywhere(boat, half, floor + LOW * (roof - floor));
  const less = anywhere(boat, half, bodies.massMoment[2] / bodies.mass);
  const both = rows.map(row => ({
    ...row,
    effectOf: (slot: Slot) => (slot === less ? opposite : same)(row.effectOf(slot)),
  }));
  // What is carried now and then only can but add.
  const found = cheapestPieces(scope === scopeOf(boat) ? [more, less] : [more], both);
  return (found?.shares ?? [])
    .filter(({ mass }) => mass > NOTHING)
    .map(({ slot, mass, station, offset }) => ({
      mass: slot === less ? -mass : mass,
      at: [station, offset, slot.height],
    }));
}

type Effect = ReturnType<BalanceRow['effectOf']>;

const same = (effect: Effect): Effect => effect;
const opposite = ({ perMass, perAft, perStarboard }: Effect): Effect => ({
  perMass: -perMass,
  perAft: -perAft,
  perStarboard: -perStarboard,
});

/** Ends of the stretch that weight may lie in, as parts of the boat's length: nobody reaches into its very tips. */
const ENDS = [0.05, 0.95] as const;

/** So heavy for its length that it has room everywhere. */
const HEAVY = 1e6;

const anywhere = ({ length }: Boat, half: number, height: number): Slot => ({
  bay: { path: [], name: '', takes: 'lead', inside: '', from: [0, -half, height], to: [length, half, height] },
  material: 'lead',
  isShot: false,
  density: HEAVY,
  breadth: 0,
  depth: 0,
  strips: [1, 1],
  massPerLength: HEAVY,
  pieces: [],
  station: [ENDS[0] * length, ENDS[1] * length],
  offset: [-half, half],
  height,
});

/** Under a name that nobody can write. */
const asPart = ({ mass, at }: Weight, i: number, { compartments }: Boat): Part => ({
  path: [],
  name: `\n${i}`,
  copies: 1,
  mass,
  massFrom: 'scale',
  centroid: at,
  holds: [],
  form: null,
  volume: 0,
  inside: compartments[0]?.name ?? null,
  material: null,
  materialWords: null,
  fixed: true,
  pinned: true,
  isLearned: false,
  from: at,
  to: at,
  worked: [],
  written: null,
});

/** "45 g more near station 310 mm, 6 mm up, to port", "120 g less near station 410 mm". */
function wordsOf({ mass, at: [station, offset, height] }: Weight, { units }: Boat): string {
  const side = Math.abs(offset) < 0.001 ? '' : offset > 0 ? ', to starboard' : ', to port';
  const up = mass > 0 ? `, ${heightUp(height, units)}` : '';
  return `${massText(Math.abs(mass), units)} ${mass > 0 ? 'more' : 'less'} near station ${stationTape(station, units)}${up}${side}`;
}
