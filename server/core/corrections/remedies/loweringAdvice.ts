import type { Boat, Part } from '../../boat/boat.ts';
import { boundsOf } from '../../geometry/cut/solids.ts';
import type { Vec3 } from '../../geometry/form/vector.ts';
import type { Steps } from '../../steps/steps.ts';
import { tapeStep, tapeText } from '../../wording/numbers.ts';
import { scopeOf } from '../balance/row.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import { balancesOf } from '../search/balances.ts';
import { keepsWith } from './besides.ts';

/** Parts that are tried, those that need to go down least first. */
const MOST_TRIED = 3;
/** As far as it takes on paper, and further where that is too little. */
const FURTHER = [1.1, 1.5] as const;

/**
 * What would steady a boat that lies too high: one thing in a compartment put lower, as little as it takes, where there is
 * that much room under it. Floated by the full model; null where weight high up is not to blame, or nothing can go down so far.
 */
export function* loweringAdvice(boatToTrim: BoatToTrim): Steps<string | null> {
  const { boat } = boatToTrim;
  const missing = missingStability(boatToTrim);
  if (missing <= 0) return null;
  const step = tapeStep(boat.units);
  const tried = boat.payload
    .filter(part => part.inside !== null && missing / part.mass < roomUnder(part, boat))
    .sort((a, b) => b.mass - a.mass)
    .slice(0, MOST_TRIED);
  for (const part of tried) {
    for (const further of FURTHER) {
      const down = Math.ceil((further * missing) / part.mass / step) * step;
      if (down > roomUnder(part, boat)) continue;
      const lower = { ...boat, payload: boat.payload.map(other => (other === part ? lowered(part, down) : other)) };
      const besides = yield* keepsWith(boatToTrim, lower);
      if (besides !== null) return `With “${part.name}” ${tapeText(down, boat.units)} lower${besides}.`;
    }
  }
  return null;
}

/** The most that weight must come down, kg·m, for the stability that is asked in each condition. */
function missingStability(boatToTrim: BoatToTrim): number {
  const rows = balancesOf(boatToTrim, scopeOf(boatToTrim.boat), 1)(null);
  return Math.max(0, ...rows.map(({ wanted }) => ('least' in wanted ? wanted.least : 0)));
}

/** Down to the floor of its compartment, m. */
function roomUnder(part: Part, { compartments }: Boat): number {
  const home = compartments.find(({ name }) => name === part.inside);
  return home ? part.from[2] - boundsOf(home.form).from[2] : 0;
}

function lowered(part: Part, by: number): Part {
  const down = ([x, y, z]: Vec3): Vec3 => [x, y, z - by];
  return { ...part, centroid: down(part.centroid), from: down(part.from), to: down(part.to) };
}
